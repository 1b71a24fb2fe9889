import { FINDINGS, OUTCOMES, SMALL_TESTS } from '@sheafbook/keeping';
import { z } from 'zod';

const WRONG_AND_NOT = 'Either nothing was wrong, or something was.';

/** A look at a container, from outside or as it was opened, and what whoever looked makes of it. */
export const inspectionWish = z
  .strictObject({
    how: z.enum(['outside', 'opened']),
    findings: z
      .array(z.enum(FINDINGS))
      .min(1, 'Say what was found, or that nothing was wrong.')
      .max(FINDINGS.length)
      .refine((findings) => new Set(findings).size === findings.length, 'Name each finding once.')
      .refine((findings) => findings.length === 1 || !findings.includes('nothing-wrong'), WRONG_AND_NOT),
    outcome: z.enum(OUTCOMES),
    /** Kernels damaged by insects, counted in a sample. */
    kernels: z
      .strictObject({ damaged: z.int().min(0).max(100_000), sampleGrams: z.int().min(1).max(10_000) })
      .nullable()
      .default(null),
    note: z.string().trim().max(500).default(''),
    /** Books the grams out to animals, compost or the rubbish in the same step. */
    isMovedOut: z.boolean().default(false),
  })
  .refine(({ isMovedOut, outcome }) => !isMovedOut || outcome in WAY_OF_OUTCOME, {
    path: ['isMovedOut'],
    message: 'Only what goes to animals, compost or the rubbish is booked out.',
  });
export type InspectionWish = z.infer<typeof inspectionWish>;

/** Where the grams of an outcome go. */
export const WAY_OF_OUTCOME = { animals: 'animals', compost: 'composted', discard: 'discarded' } as const;

export const undoing = z.strictObject({ reason: z.string().trim().min(1, 'Say why.').max(500) });

/** One's own containers, or the common stock's. */
export const inspectionQuery = z.strictObject({ of: z.enum(['household', 'common']).default('household') });
export type InspectionQuery = z.infer<typeof inspectionQuery>;

/** A few seeds laid to sprout, a loaf baked, a pot of beans cooked. */
export const smallTestWish = z
  .strictObject({
    kind: z.enum(SMALL_TESTS),
    seeds: z
      .strictObject({ laid: z.int().min(1).max(10_000), sprouted: z.int().min(0).max(10_000) })
      .nullable()
      .default(null),
    note: z.string().trim().max(500).default(''),
  })
  .refine(({ kind, seeds }) => (kind === 'sprout') === (seeds !== null), {
    path: ['seeds'],
    message: 'Seeds are counted in a sprout test, and in no other.',
  })
  .refine(({ seeds }) => seeds === null || seeds.sprouted <= seeds.laid, {
    path: ['seeds', 'sprouted'],
    message: 'No more can sprout than were laid.',
  })
  .refine(({ kind, note }) => kind === 'sprout' || note !== '', {
    path: ['note'],
    message: 'Say how it turned out.',
  });
export type SmallTestWish = z.infer<typeof smallTestWish>;
