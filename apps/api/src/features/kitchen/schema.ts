import { z } from 'zod';
import { useUp } from '../container/schema.ts';

/** How much of a container is taken to the kitchen; left out is all of it. */
export const take = z.strictObject({
  grams: z.int().positive('Give a whole number of grams above zero.').max(10_000_000).optional(),
});
export type Take = z.infer<typeof take>;

export const undoTake = z.strictObject({ reason: z.string().trim().max(500).default('') });

/** What was eaten out of the kitchen, or left it some other way. */
export const useKitchen = useUp.extend({ lotId: z.uuid() });
export type UseKitchen = z.infer<typeof useKitchen>;
