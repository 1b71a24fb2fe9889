import { isCurrencyCode, isTimeZone } from '@sheafbook/units';
import { z } from 'zod';
import { email, newPassword, personName } from '../session/schema.ts';

export const thingName = z
  .string()
  .trim()
  .min(1, 'A name is needed.')
  .max(120, 'A name has 120 characters at most.');

const storehouseFacts = z.strictObject({
  name: thingName,
  currency: z.string().refine(isCurrencyCode, 'This is no currency code of ISO 4217, such as USD.'),
  timeZone: z.string().refine(isTimeZone, 'There is no such time zone; one looks like America/Chicago.'),
  massDisplay: z.enum(['lb', 'kg']).default('lb'),
  language: z.enum(['en', 'es']).default('en'),
});
export type StorehouseFacts = z.infer<typeof storehouseFacts>;

export const setUp = z.strictObject({
  email,
  password: newPassword,
  personName,
  householdName: thingName,
  storehouse: storehouseFacts,
});
export type SetUp = z.infer<typeof setUp>;

export const storehouseEdit = z.strictObject({
  version: z.int().positive(),
  name: thingName,
  timeZone: storehouseFacts.shape.timeZone,
  massDisplay: z.enum(['lb', 'kg']),
  language: z.enum(['en', 'es']),
  /** The month with whose last day the financial year ends; left out, it stays as it is. */
  yearEndMonth: z.int().min(1).max(12).optional(),
});
export type StorehouseEdit = z.infer<typeof storehouseEdit>;

const wholeAmount = z.int().nonnegative();

export const rulesChange = z.strictObject({
  rulesVersion: z.int().positive(), // the version that was read
  depositPercent: z.int().min(0).max(100),
  freightBasis: z.enum(['by-weight', 'by-value', 'per-household', 'blend']),
  blendNumerator: z.int().nonnegative().default(1),
  blendDenominator: z.int().positive().default(2),
  splitRule: z.enum([
    'proportional',
    'equal-awards',
    'equal-losses',
    'first-come',
    'need-first',
    'rotation-of-loss',
  ]),
  commonCapGrams: wholeAmount,
  levyHundredthsOfPercent: z.int().min(0).max(10_000),
  writeOffLimitMinorUnits: wholeAmount,
  priceRisePercent: z.int().min(0).max(100),
  claimWindowHours: z.int().min(1).max(1000),
  uncollectedDays: z.int().min(1).max(1000),
  /** The days of the three dates of a container; what is left out stays as it is. */
  offerDays: z.int().min(0).max(1000).optional(),
  offerDaysWithoutPantry: z.int().min(0).max(1000).optional(),
  giftWindowDays: z.int().min(1).max(365).optional(),
  eatFirstMarginDays: z.int().min(1).max(365).optional(),
});
export type RulesChange = z.infer<typeof rulesChange>;
