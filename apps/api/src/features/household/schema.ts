import { z } from 'zod';
import { personName } from '../session/schema.ts';
import { thingName } from '../storehouse/schema.ts';

/** A household on paper: its one person has no login, and a helper acts for it. */
export const paperHousehold = z.strictObject({ name: thingName, personName });
export type PaperHousehold = z.infer<typeof paperHousehold>;

export const householdEdit = z.strictObject({ version: z.int().positive(), name: thingName });
export type HouseholdEdit = z.infer<typeof householdEdit>;
