import { ALLERGENS, KEEPING_CLASSES } from '@sheafbook/foods';
import { LABEL_FACTS } from '@sheafbook/giving';
import { isTimeZone } from '@sheafbook/units';
import { z } from 'zod';
import { day } from '../buy/schema.ts';
import { thingName } from '../storehouse/schema.ts';

const text = (most: number) => z.string().trim().max(most, `This has ${most} characters at most.`);
const days = z.int().min(0, 'Days are not below zero.').max(36_500);
const grams = z
  .int()
  .positive('A most is above nothing; leave it empty where there is none.')
  .max(100_000_000);
const codes = z.array(z.string().min(1).max(80)).max(200);
/** Null is unknown, and unknown is not accepted. */
const answer = z.boolean().nullable();
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'Write a time such as 09:30.');

const facts = {
  name: thingName,
  address: text(300).min(1, 'Say where its door is.'),
  timeZone: z.string().refine(isTimeZone, 'There is no such time zone; one looks like America/Chicago.'),
  /** Whom to ask for there, by duty, such as "intake desk". */
  contactDuty: text(100).min(1, 'Say whom to ask for there, by duty.'),
  contact: text(300),
  distanceMetres: z.int().min(0).max(1_000_000),
};

const opening = z
  .strictObject({ weekday: z.int().min(0).max(6), opensAt: clock, closesAt: clock })
  .refine(({ opensAt, closesAt }) => opensAt < closesAt, {
    path: ['closesAt'],
    message: 'It closes after it opens.',
  });

const cardFacts = z.strictObject({
  acceptsMakerSealed: answer,
  acceptsHomePacked: answer,
  acceptsLicensedKitchen: answer,
  acceptsReducedOxygen: answer,
  mostDaysPastBest: z
    .int()
    .positive('Leave it empty where nothing past its date is taken.')
    .max(3650)
    .nullable(),
  pastBestClasses: z.array(z.enum(KEEPING_CLASSES)).nullable(),
  leastLifeDays: days,
  containerKindCodes: codes.nullable(),
  labelFacts: z.array(z.enum(LABEL_FACTS)),
  foodCodesWanted: codes.nullable(),
  foodCodesNotWanted: codes,
  allergensNotTaken: z.array(z.enum(ALLERGENS)),
  wantsAllergensApart: answer,
  takesCold: answer,
  givesReceipt: answer,
  mostGramsPerVisit: grams.nullable(),
  mostGramsPerWeek: grams.nullable(),
  openings: z
    .array(opening)
    .max(21)
    .refine(
      (rows) => new Set(rows.map(({ weekday, opensAt }) => `${weekday} ${opensAt}`)).size === rows.length,
      {
        message: 'Name each time once.',
      },
    ),
  note: text(1000),
  confirmedOn: day,
  /** Who said so there, by duty. */
  confirmedBy: text(100).min(1, 'Say who told it, by duty.'),
});
export type CardFacts = z.infer<typeof cardFacts>;

export const newPantry = z.strictObject({ ...facts, card: cardFacts });
export type NewPantry = z.infer<typeof newPantry>;

export const pantryEdit = z.strictObject({ version: z.int().positive(), ...facts, isRetired: z.boolean() });
export type PantryEdit = z.infer<typeof pantryEdit>;

/** A newer card; `version` is the number of the one that was read. */
export const newCard = z.strictObject({ version: z.int().positive(), card: cardFacts });
export type NewCard = z.infer<typeof newCard>;
