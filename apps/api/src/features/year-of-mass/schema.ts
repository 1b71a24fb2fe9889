import { z } from 'zod';

const year = z.coerce.number().int().min(1950).max(2200).optional();
const of = z.enum(['household', 'store']).default('household');

/** Without a year it is the running one. */
export const massQuery = z.strictObject({ year, of });
export type MassQuery = z.infer<typeof massQuery>;

export const massMovementsQuery = z.strictObject({
  ...{ year, of },
  part: z.enum(['landed', 'from-others', 'changed', 'eaten', 'given', 'lost', 'to-others']),
});
export type MassMovementsQuery = z.infer<typeof massMovementsQuery>;
export type MassPart = MassMovementsQuery['part'];
