import { TREATMENT_CODES } from '@sheafbook/keeping';
import { z } from 'zod';

/** Labels for containers that are still to be filled from a household's part of a bag. */
export const labelsAhead = z.strictObject({
  bagId: z.uuid(),
  householdId: z.uuid(),
  containerKindId: z.uuid(),
  treatment: z.enum(TREATMENT_CODES),
  count: z.int().min(1, 'Make a label at least.').max(500, 'Make 500 labels at a time.'),
});
export type LabelsAhead = z.infer<typeof labelsAhead>;
