import { TREATMENT_CODES } from '@sheafbook/keeping';
import { isDay } from '@sheafbook/units';
import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';

const grams = z.int().positive('Give a whole number of grams above zero.').max(10_000_000);
const count = z.int().min(1).max(500, 'Record 500 containers at a time at most.');
const day = z.string().refine(isDay, 'There is no such day; one looks like 2026-10-24.');

/** What was done to the food as it was packed, and its moisture then; left out is unknown. */
const treatment = z.enum(TREATMENT_CODES).nullable().default(null);
const moistureTenths = z.int().min(0).max(1000, 'A moisture is at most 100 %.').nullable().default(null);

/** Containers filled alike from one's own grams in a bag: "24 cans at 2,600 g". */
export const pour = z.strictObject({
  bagId: z.uuid(),
  containerKindId: z.uuid(),
  count,
  gramsEach: grams,
  packedOn: day.optional(),
  treatment,
  moistureTenths,
  note: z.string().trim().max(500).default(''),
});
export type Pour = z.infer<typeof pour>;

export const pourInto = z.strictObject({ bagId: z.uuid(), grams });
export type PourInto = z.infer<typeof pourInto>;

/** Food that a household had before, or got elsewhere; how it came is part of its history. */
export const bringIn = z.strictObject({
  foodId: z.uuid(),
  originNote: z.string().trim().min(1, 'Say where it came from, or that nobody knows.').max(500),
  harvestYear: z.int().min(1950).max(2200).optional(),
  containerKindId: z.uuid(),
  count,
  gramsEach: grams,
  packedOn: day,
  treatment,
  moistureTenths,
});
export type BringIn = z.infer<typeof bringIn>;

/** Says afterwards what was done to a container, or mends what was said. */
export const treated = z.strictObject({ treatment, moistureTenths });
export type Treated = z.infer<typeof treated>;

const WAYS_OUT = ['eaten', 'given', 'animals', 'composted', 'spilled', 'sampled', 'discarded'] as const;
export const useUp = z.strictObject({
  grams,
  to: z.enum(WAYS_OUT),
  note: z.string().trim().max(500).default(''),
});
export type UseUp = z.infer<typeof useUp>;

export const undoPour = z.strictObject({ reason: z.string().trim().min(1, 'Say why.').max(500) });

export const shelfQuery = pageQuery.extend({ after: z.uuid().optional() });
