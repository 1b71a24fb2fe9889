import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { thingName } from '../storehouse/schema.ts';

const text = (most: number) =>
  z.string().trim().max(most, `This has ${most} characters at most.`).default('');
const amount = z.int().nonnegative('An amount is not below zero.');
const minutes = z.int().min(0).max(20_160, 'Two weeks is the most between two bookings.');
const interval = z.int().positive('Leave it empty where there is no such interval.').nullable();

const facts = {
  name: thingName,
  kindNote: text(200),
  cautions: text(1000),
  keptWhere: text(200),
  valueMinorUnits: amount.nullable(),
  depositMinorUnits: amount,
  feeMinorUnits: amount,
  lateFeeMinorUnits: amount,
  damageNote: text(500),
  preMinutes: minutes,
  postMinutes: minutes,
  longestDays: z.int().min(1).max(90),
  mayRelay: z.boolean(),
  /** Food goes through it or lies in it, as in a mill or a funnel. */
  touchesFood: z.boolean().default(false),
  /** Something is weighed on it, so that it is checked with a known weight. */
  isScale: z.boolean().default(false),
  /** It is checked against a known temperature. A thing that is a scale too is listed as two. */
  isThermometer: z.boolean().default(false),
  serviceEveryUses: interval,
  serviceEveryDays: interval,
  /** How many that are alike. More may be added; one that is gone is retired, so that its past stays. */
  units: z.int().min(1, 'There is one at least.').max(200),
};

const MEASURES_ONE = {
  path: ['isThermometer'],
  message: 'A thing is a scale or a thermometer. List what is both as two things.',
};
const measuresOne = (item: { isScale: boolean; isThermometer: boolean }) =>
  !(item.isScale && item.isThermometer);

export const itemWish = z.strictObject(facts).refine(measuresOne, MEASURES_ONE);
export type ItemWish = z.infer<typeof itemWish>;
export const itemEdit = z
  .strictObject({ version: z.int().positive(), ...facts })
  .refine(measuresOne, MEASURES_ONE);
export type ItemEdit = z.infer<typeof itemEdit>;
export type ItemFacts = Omit<ItemWish, 'units'>;

const part = z.strictObject({
  /** Left out for a part that is new. */
  id: z.uuid().optional(),
  name: thingName,
  pieces: z.int().min(1).max(1000),
  isCritical: z.boolean(),
  valueMinorUnits: amount,
});
export const partsWish = z.strictObject({
  parts: z
    .array(part)
    .max(100)
    .refine((parts) => new Set(parts.map(({ name }) => name.toLowerCase())).size === parts.length, {
      message: 'Name each part once.',
    }),
});
export type PartsWish = z.infer<typeof partsWish>;

export const unitEdit = z.strictObject({
  version: z.int().positive(),
  condition: z.enum(['ready', 'dirty', 'broken', 'retired']),
  conditionNote: text(500),
  /** What it lacks of its parts now; those left out are all there. */
  missing: z
    .array(z.strictObject({ partId: z.uuid(), pieces: z.int().positive() }))
    .max(100)
    .optional(),
});
export type UnitEdit = z.infer<typeof unitEdit>;

export const equipmentQuery = pageQuery;
