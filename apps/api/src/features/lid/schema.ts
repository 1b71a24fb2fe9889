import { z } from 'zod';
import { instant } from '../buy/schema.ts';

/** One's own jars, or with "common" those that stand in the store, whosever they are. */
const of = z.enum(['household', 'common']).default('household');
const containerIds = z.array(z.uuid()).max(500, 'Answer for 500 jars at a time at most.');
const isOnce = (ids: readonly string[]) => new Set(ids).size === ids.length;
const ONCE = 'Each jar stands once.';

export const lidQuery = z.strictObject({ of });
export type LidQuery = z.infer<typeof lidQuery>;

/** All of these held, but those whose codes are given. */
export const lidAnswers = z
  .strictObject({
    of,
    containerIds: containerIds.refine(isOnce, ONCE),
    /** As they stand on the labels of those that did not hold. */
    looseCodes: z.array(z.string().trim().min(1).max(40)).max(500).default([]),
    note: z.string().trim().max(500).default(''),
    /** When they were looked at, where it waited on a phone or a paper; left out it is now. */
    checkedAt: instant.optional(),
  })
  .refine((answers) => answers.containerIds.length + answers.looseCodes.length > 0, {
    path: ['containerIds'],
    message: 'Say which jars.',
  });
export type LidAnswers = z.infer<typeof lidAnswers>;

/** Jars that were closed again, each with a fresh absorber or a new vacuum. */
export const lidClosings = z.strictObject({
  of,
  containerIds: containerIds.min(1, 'Say which jars.').refine(isOnce, ONCE),
  note: z.string().trim().max(500).default(''),
});
export type LidClosings = z.infer<typeof lidClosings>;
