import { LABEL_FACTS } from '@sheafbook/giving';
import { z } from 'zod';
import { day } from '../buy/schema.ts';

const text = (most: number) => z.string().trim().max(most, `This has ${most} characters at most.`);

/** Who sealed a container, what its label says, and what was seen of it. */
export const giftFactsWish = z.strictObject({
  sealedBy: z.enum(['maker', 'home', 'licensed-kitchen', 'unsealed']),
  labelFacts: z.array(z.enum(LABEL_FACTS)),
  isTreatedSeed: z.boolean(),
  isMouldy: z.boolean(),
});
export type GiftFactsWish = z.infer<typeof giftFactsWish>;

export const ladderStepWish = z.strictObject({
  to: z.enum(['animals', 'composted', 'discarded']),
  reason: text(300).min(1, 'Say why.'),
});
export type LadderStepWish = z.infer<typeof ladderStepWish>;

const trip = z.strictObject({
  pantryId: z.uuid(),
  onDay: day,
  capacityGrams: z.int().positive('A trip carries something.').max(100_000_000),
  /** The way there and back, where it differs from what the pantry’s entry says. */
  distanceMetres: z.int().min(0).max(2_000_000).optional(),
});
export const matchingWish = z.strictObject({
  trips: z
    .array(trip)
    .min(1, 'Name a trip.')
    .max(6, 'Six trips at a time.')
    .refine(
      (trips) => new Set(trips.map(({ pantryId, onDay }) => `${pantryId} ${onDay}`)).size === trips.length,
      {
        message: 'Name each trip once.',
      },
    ),
});
export type MatchingWish = z.infer<typeof matchingWish>;

export const manifestWish = z.strictObject({
  matchingId: z.uuid(),
  trip: z.int().min(0).max(5),
  driver: text(100).min(1, 'Say who drives.'),
  /** What was not found on its shelf. */
  leaveOut: z.array(z.uuid()).max(1000).default([]),
});
export type ManifestWish = z.infer<typeof manifestWish>;

export const receiptWish = z.strictObject({
  version: z.int().positive(),
  receivedOn: day,
  /** Who took it in there, by duty. */
  receiverDuty: text(100).min(1, 'Say who took it in, by duty.'),
  note: text(500).default(''),
  /** What came back, with the reason; all else was accepted. */
  refused: z
    .array(z.strictObject({ containerId: z.uuid(), reason: text(300).min(1, 'Say why it came back.') }))
    .max(1000)
    .refine((rows) => new Set(rows.map(({ containerId }) => containerId)).size === rows.length, {
      message: 'Name each container once.',
    }),
});
export type ReceiptWish = z.infer<typeof receiptWish>;

export const reasonWish = z.strictObject({
  version: z.int().positive(),
  reason: text(300).min(1, 'Say why.'),
});
export type ReasonWish = z.infer<typeof reasonWish>;

export const yearQuery = z.strictObject({
  year: z.coerce.number().int().min(1950).max(2200).optional(),
});
export type YearQuery = z.infer<typeof yearQuery>;
