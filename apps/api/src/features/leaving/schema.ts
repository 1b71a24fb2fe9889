import { z } from 'zod';

/** The version of the household that was read: nobody leaves from a page that has gone stale. */
export const householdLeaving = z.strictObject({ version: z.int().positive() });
