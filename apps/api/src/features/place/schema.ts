import { POSSIBLE_TENTHS } from '@sheafbook/keeping';
import { z } from 'zod';
import { thingName } from '../storehouse/schema.ts';

const PLACE_KINDS = [
  ...(['cellar', 'pantry', 'kitchen', 'room', 'garage', 'shed', 'attic', 'cold-room', 'freezer'] as const),
  'other',
] as const;

const facts = {
  name: thingName,
  kind: z.enum(PLACE_KINDS),
  /** Null where nobody knows. */
  isLit: z.boolean().nullable(),
  isDamp: z.boolean().nullable(),
  isRodentProof: z.boolean().nullable(),
  /** The food that its shelves carry; null where nobody has said. Left out, it stays as it is. */
  mostGrams: z
    .int()
    .positive('Shelves carry something; leave it empty where nobody has said how much.')
    .max(1_000_000_000)
    .nullable()
    .optional(),
};

export const newPlace = z.strictObject({ of: z.enum(['household', 'store']), ...facts });
export type NewPlace = z.infer<typeof newPlace>;

export const placeEdit = z.strictObject({ version: z.int().positive(), ...facts });
export type PlaceEdit = z.infer<typeof placeEdit>;

const tenths = z
  .int()
  .min(POSSIBLE_TENTHS.least, 'No place for food is colder than −60 °C (−76 °F).')
  .max(POSSIBLE_TENTHS.most, 'No place for food is warmer than 70 °C (158 °F).');
const month = z
  .string()
  .regex(/^(19[5-9]\d|2[01]\d\d)-(0[1-9]|1[0-2])$/, 'There is no such month; one looks like 2025-07.');

/** How warm a place was on the whole, by the month; null takes a month out again. */
export const monthsWish = z.strictObject({
  months: z
    .array(z.strictObject({ month, tenthsCelsius: tenths.nullable() }))
    .min(1, 'Name a month at least.')
    .max(1200)
    .refine((months) => new Set(months.map((row) => row.month)).size === months.length, {
      message: 'Name each month once.',
    }),
});
export type MonthsWish = z.infer<typeof monthsWish>;

/** How a logger's file is to be read; the file itself is the body, of any length. */
const howToRead = {
  unit: z.enum(['C', 'F']).default('C'),
  dayOrder: z.enum(['ymd', 'mdy', 'dmy']).default('ymd'),
};

export const logPreviewQuery = z.strictObject({
  ...howToRead,
  badAfterLine: z.coerce.number().int().min(0).default(0),
});
export type LogPreviewQuery = z.infer<typeof logPreviewQuery>;

export const logQuery = z.strictObject({ ...howToRead, fileName: thingName.default('readings.csv') });
export type LogQuery = z.infer<typeof logQuery>;
