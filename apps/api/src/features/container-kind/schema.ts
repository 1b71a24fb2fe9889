import { BARRIERS } from '@sheafbook/keeping';
import { MOST_TARE_GRAMS } from '@sheafbook/packing';
import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { thingName } from '../storehouse/schema.ts';

const tareGrams = z.int().min(0).max(MOST_TARE_GRAMS).nullable();
const priceMinorUnits = z.int().min(0).max(1_000_000_000).nullable();

/** What a kind does for the food in it, with who says so. A wall that nobody named is taken for one that lets air through. */
const traits = z.strictObject({
  barrier: z.enum(BARRIERS).nullable(),
  isDark: z.boolean(),
  isBreakable: z.boolean(),
  isRodentProof: z.boolean(),
  needsOuter: z.boolean(),
  isReusable: z.boolean(),
  mostStacked: z.int().min(1).max(100).nullable(),
  traitsSource: z.string().trim().min(1, 'Say who says so, or that it is your own judgement.').max(300),
});

export const containerKindWish = z.strictObject({
  kindCode: z
    .string()
    .max(80, 'A code has 80 characters at most.')
    .regex(
      /^[a-z0-9]+(-[a-z0-9]+)*$/,
      'A code is small letters and digits with single hyphens, such as jar-pint.',
    ),
  nameEn: thingName,
  nameEs: thingName.optional(),
  /** What it truly holds, filled level; its name may say less or more. */
  capacityMicrolitres: z.int().min(1000).max(1_000_000_000),
  tareGrams: tareGrams.default(null),
  priceMinorUnits: priceMinorUnits.default(null),
  source: z.string().trim().min(1, 'Say where the capacity comes from.').max(300),
  traits: traits.optional(),
});
export type ContainerKindWish = z.infer<typeof containerKindWish>;

/**
 * A capacity never changes: containers were filled by it. A different one is a kind of its own. The traits are changed of the
 * group's own kinds only.
 */
export const containerKindEdit = z.strictObject({
  version: z.int().positive(),
  tareGrams,
  priceMinorUnits,
  traits: traits.optional(),
});
export type ContainerKindEdit = z.infer<typeof containerKindEdit>;

export const containerKindQuery = pageQuery;
