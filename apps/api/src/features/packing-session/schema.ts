import { TREATMENT_CODES } from '@sheafbook/keeping';
import { CAN_LINE } from '@sheafbook/packing';
import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { grams, instant, minorUnitsOrNone, reason, version } from '../buy/schema.ts';
import { thingName } from '../storehouse/schema.ts';

const minutes = z.int().nonnegative().max(600, 'That is more than ten hours.');
const MOST_SECONDS = 3600;
export const STATION_NAMES = ['fill', 'weigh', 'absorber', 'seam', 'label', 'box'] as const;

const station = z.strictObject({
  name: z.enum(STATION_NAMES),
  secondsPerUnit: z.int().positive('A station takes time.').max(MOST_SECONDS, 'That is more than an hour.'),
  /** A machine with one operator. */
  staysAlone: z.boolean(),
});

const facts = {
  name: thingName,
  place: z.string().trim().max(200, 'A place has 200 characters at most.').default(''),
  startsAt: instant,
  endsAt: instant,
  lines: z
    .int()
    .min(1, 'A session has a line at least.')
    .max(20, 'That is more lines than a hall holds.')
    .default(1),
  peopleALine: z
    .int()
    .min(1, 'Somebody stands at a line.')
    .max(30, 'That is more people than a line needs.')
    .default(6),
  stations: z
    .array(station)
    .min(1, 'A line has a station at least.')
    .max(STATION_NAMES.length)
    .refine((list) => new Set(list.map(({ name }) => name)).size === list.length, 'Each station stands once.')
    .default([...CAN_LINE] as z.infer<typeof station>[]),
  setupMinutes: minutes.default(30),
  breakMinutes: minutes.default(15),
  cleanDownMinutes: minutes.default(45),
  /** For each container that is filled. */
  lineFeeMinorUnits: minorUnitsOrNone.default(0),
};

export const sessionWish = z.strictObject(facts);
export type SessionWish = z.infer<typeof sessionWish>;
export const sessionEdit = z.strictObject({ ...facts, version });
export type SessionEdit = z.infer<typeof sessionEdit>;

export const callOff = z.strictObject({ because: reason });

export const wishList = z.strictObject({
  wishes: z
    .array(
      z.strictObject({
        foodId: z.uuid(),
        containerKindId: z.uuid(),
        treatment: z.enum(TREATMENT_CODES),
        containers: z
          .int()
          .min(1, 'Ask for a container at least.')
          .max(5000, 'That is more than a line fills in days.'),
        gramsEach: grams,
        /** May be run together with others’ food of the same lot, kind and treatment. */
        mayMix: z.boolean().default(false),
      }),
    )
    .max(40, 'A household asks for 40 kinds of containers at most.'),
});
export type WishList = z.infer<typeof wishList>;

export const slotWish = z.strictObject({
  startsAt: instant,
  /** When no line is free then: wait for one. */
  orWait: z.boolean().default(false),
});
export type SlotWish = z.infer<typeof slotWish>;

/** That somebody of the household stands at the line; a tick by mistake is taken back. */
export const arrival = z.strictObject({
  isHere: z.boolean(),
  /** When it was seen, where the tick waited on a phone; left out it is now. */
  cameAt: instant.optional(),
});
export type Arrival = z.infer<typeof arrival>;

export const handWish = z.strictObject({
  isComing: z.boolean(),
  /** Trained at the seamer. */
  maySeam: z.boolean().default(false),
  /** More than 10 kg. */
  mayLift: z.boolean().default(true),
  /** Can work at a station only that is worked from a chair. */
  seatedOnly: z.boolean().default(false),
  /** Never at the machine; no date of birth is asked for. */
  isUnder16: z.boolean().default(false),
});
export type HandWish = z.infer<typeof handWish>;

export const attendance = z.strictObject({ state: z.enum(['came', 'stayed-away', 'coming']) });
export type Attendance = z.infer<typeof attendance>;

export const planQuery = z.strictObject({
  /** At each line, instead of as many as the session counts on. */
  people: z.coerce.number().int().min(1).max(30).optional(),
});

export const sessionQuery = pageQuery.extend({ after: z.uuid().optional() });
export type SessionQuery = z.infer<typeof sessionQuery>;

/** A mixed run, as it was shown. */
export const mixPosting = z.strictObject({
  mixId: z.uuid(),
  seen: z.string().regex(/^[0-9a-f]{64}$/, 'Send back what was shown.'),
});
export type MixPosting = z.infer<typeof mixPosting>;

export const mixUndoing = z.strictObject({ packingMixId: z.uuid(), reason });
export type MixUndoing = z.infer<typeof mixUndoing>;
