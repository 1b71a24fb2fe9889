import { BUY_STAGES } from '@sheafbook/ledger';
import { isDay } from '@sheafbook/units';
import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { rulesChange, thingName } from '../storehouse/schema.ts';

export const version = z.int().positive();
export const day = z.string().refine(isDay, 'There is no such day; one looks like 2026-09-20.');
export const instant = z.iso.datetime({
  offset: true,
  error: 'An instant looks like 2026-09-20T23:00:00Z.',
});

/** A thousand tonnes: past any storehouse, so a larger figure is a slip of the hand. */
const MOST_GRAMS = 1_000_000_000;
/** Far past any buy, and small enough that a sum of a thousand of them stays exact. */
const MOST_MINOR_UNITS = 1_000_000_000_000;

export const grams = z.int().positive().max(MOST_GRAMS, 'That is more than a thousand tonnes.');
export const gramsOrNone = z.int().nonnegative().max(MOST_GRAMS, 'That is more than a thousand tonnes.');
export const minorUnits = z.int().positive().max(MOST_MINOR_UNITS, 'That is more money than any buy.');
export const minorUnitsOrNone = z
  .int()
  .nonnegative()
  .max(MOST_MINOR_UNITS, 'That is more money than any buy.');
export const note = z.string().trim().max(1000, 'A note has 1000 characters at most.');
export const reason = note.min(1, 'Write down the reason.');

export const lineWish = z.strictObject({
  foodId: z.uuid(),
  /** The unit that its bags and pledges are counted in. */
  massUnit: z.enum(['lb', 'kg']).default('lb'),
  /** A share of a bag comes in steps of this many. */
  stepUnits: z.int().min(1).max(1000).default(5),
  /** Null: the group's rule and cap. */
  splitRule: rulesChange.shape.splitRule.nullable().default(null),
  commonCapGrams: gramsOrNone.nullable().default(null),
});
export type LineWish = z.infer<typeof lineWish>;

export const lineEdit = z.strictObject({
  version,
  stepUnits: lineWish.shape.stepUnits.unwrap(),
  splitRule: rulesChange.shape.splitRule.nullable(),
  commonCapGrams: gramsOrNone.nullable(),
});
export type LineEdit = z.infer<typeof lineEdit>;

const place = z.string().trim().max(200, 'A place has 200 characters at most.');

const facts = {
  name: thingName,
  gatheringClosesAt: instant,
  orderOn: day,
  landingOn: day.nullable().default(null),
  landingPlace: place.default(''),
};

/** A dozen foods is a large buy; forty lines is where a slip of the hand begins. */
export const buyWish = z.strictObject({ ...facts, lines: z.array(lineWish).max(40).default([]) });
export type BuyWish = z.infer<typeof buyWish>;

export const buyEdit = z.strictObject({ ...facts, version });
export type BuyEdit = z.infer<typeof buyEdit>;
export type BuyFacts = Omit<BuyEdit, 'version'>;

/** Null or empty: it is open again when, or where, the buy lands. */
export const landingPlanEdit = z.strictObject({ landingOn: day.nullable(), landingPlace: place, version });
export type LandingPlanEdit = z.infer<typeof landingPlanEdit>;

export const stageWish = z.strictObject({ to: z.enum(BUY_STAGES) });
export type StageWish = z.infer<typeof stageWish>;

export const buyQuery = pageQuery.extend({
  after: z.uuid().optional(),
  stage: z.enum(BUY_STAGES).optional(),
});
export type BuyQuery = z.infer<typeof buyQuery>;
