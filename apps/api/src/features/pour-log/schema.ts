import { TREATMENT_CODES } from '@sheafbook/keeping';
import { ABSORBER_SIZES } from '@sheafbook/packing';
import { z } from 'zod';
import { moistureReadings } from '../bag/schema.ts';
import { grams, gramsOrNone, instant, note, reason } from '../buy/schema.ts';
import { containerCode } from '../label/schema.ts';
import { STATION_NAMES } from '../packing-session/schema.ts';
import { faultOfScale, weighedHow } from './weighed.ts';

export const bringBag = z.strictObject({ bagId: z.uuid(), householdId: z.uuid() });
export type BringBag = z.infer<typeof bringBag>;

export const pourWish = z
  .strictObject({
    line: z.int().min(1).max(20),
    bagId: z.uuid(),
    householdId: z.uuid(),
    containerKindId: z.uuid(),
    treatment: z.enum(TREATMENT_CODES),
    targetGrams: grams,
    /** How much oxygen the packets in each container take up together; null where nobody says. */
    absorberMillilitres: z
      .int()
      .positive('A packet takes up something.')
      .max(20_000, 'That is more than a drum needs.')
      .nullable()
      .default(null),
    /** One a container, in the order in which the line closed them. */
    grams: z
      .array(grams)
      .min(1, 'Give the grams of a container at least.')
      .max(500, 'Log 500 containers at a time.'),
    /** What the grams are: of the food alone, or gross less tare. */
    weighed: weighedHow,
    /** The label that stands on each already, or null where it gets one afterwards. */
    codes: z.array(containerCode.nullable()).optional(),
    /** When it happened; what waited on a phone comes later. */
    pouredAt: instant.optional(),
  })
  .refine(
    ({ treatment, absorberMillilitres }) => treatment === 'oxygen-absorber' || absorberMillilitres === null,
    {
      path: ['absorberMillilitres'],
      message: 'Packets go with the treatment that uses them.',
    },
  )
  .refine(({ codes, grams: each }) => codes === undefined || codes.length === each.length, {
    path: ['codes'],
    message: 'Give a code for each container, or none.',
  })
  .refine(({ codes = [] }) => new Set(codes.filter(Boolean)).size === codes.filter(Boolean).length, {
    path: ['codes'],
    message: 'Name each container once.',
  })
  .superRefine((wish, refinement) => {
    const fault = faultOfScale(wish);
    if (fault) refinement.addIssue({ code: 'custom', ...fault });
  });
export type PourWish = z.infer<typeof pourWish>;

export const undoing = z.strictObject({ reason });

export const lossWish = z.strictObject({
  bagId: z.uuid(),
  householdId: z.uuid(),
  grams,
  to: z.enum(['spilled', 'sampled']),
  note: note.default(''),
  /** When it happened; what waited on a phone comes later. */
  lostAt: instant.optional(),
});
export type LossWish = z.infer<typeof lossWish>;

export const leftWish = z.strictObject({
  bagId: z.uuid(),
  householdId: z.uuid(),
  leftGrams: gramsOrNone,
  /** How moist it was when it came, and is now; what they explain of a difference is booked as moisture. */
  moisture: moistureReadings.nullable().default(null),
  /** Why the book says otherwise; needed beyond what a scale explains. */
  because: note.default(''),
});
export type LeftWish = z.infer<typeof leftWish>;

export const packWish = z.strictObject({
  sizeMillilitres: z
    .int()
    .refine(
      (size) => (ABSORBER_SIZES as readonly number[]).includes(size),
      'Packets are sold in other sizes.',
    ),
  packets: z.int().min(1, 'A pack holds a packet at least.').max(10_000, 'That is more than a case holds.'),
  /** By the phone that stood at the line, where there was no signal; now, unless it says so. */
  openedAt: instant.optional(),
});
export type PackWish = z.infer<typeof packWish>;

/** How many containers wait in front of a station. */
export const queueWish = z.strictObject({
  line: z.int().min(1).max(20),
  station: z.enum(STATION_NAMES),
  waiting: z.int().nonnegative().max(999, 'Nobody counts more than 999.'),
  /** When it was seen, where it waited on a phone; left out it is now. */
  saidAt: instant.optional(),
});
export type QueueWish = z.infer<typeof queueWish>;

export const packShut = z.strictObject({
  packetsLeft: z.int().nonnegative().max(10_000),
  shutAt: instant.optional(),
});
