import { SUPPLY_KINDS } from '@sheafbook/packing';
import { z } from 'zod';
import { bookDay, currency, note, reason, till } from '../money/schema.ts';
import { thingName } from '../storehouse/schema.ts';

const piecesEach = z.int().min(1).max(1000).default(1);
const pack = {
  packPieces: z.int().min(1, 'A pack holds at least one piece.').max(1_000_000),
  packMinorUnits: z.int().min(0).max(1_000_000_000).nullable().default(null),
};

export const supplyWish = z
  .strictObject({
    name: thingName,
    kind: z.enum(SUPPLY_KINDS),
    containerKindId: z.uuid().nullable().default(null),
    sizeMillilitres: z.int().min(1).max(100_000).nullable().default(null),
    piecesEach,
    ...pack,
  })
  .refine(
    ({ kind, containerKindId }) =>
      ['container', 'lid', 'liner', 'carton'].includes(kind) === (containerKindId !== null),
    {
      path: ['containerKindId'],
      error: 'Containers, lids, liners and cartons say for which kind they are, others don’t.',
    },
  )
  .refine(({ kind, sizeMillilitres }) => (kind === 'absorber') === (sizeMillilitres !== null), {
    path: ['sizeMillilitres'],
    error: 'Absorbers say how much oxygen one takes up, others don’t.',
  });
export type SupplyWish = z.infer<typeof supplyWish>;

export const supplyEdit = z.strictObject({
  version: z.int().positive(),
  name: thingName,
  piecesEach,
  ...pack,
  isRetired: z.boolean().default(false),
});
export type SupplyEdit = z.infer<typeof supplyEdit>;

const pieces = z.int().min(0).max(100_000_000);

/** Who paid: a supplier waits for it, a household paid in the shop, the bank or the tin did, or it was there or given. */
const paidBy = z.discriminatedUnion('who', [
  z.strictObject({ who: z.literal('supplier'), supplierId: z.uuid() }),
  z.strictObject({ who: z.literal('household'), householdId: z.uuid() }),
  z.strictObject({ who: z.literal('till'), till }),
  z.strictObject({ who: z.literal('nobody') }),
]);

export const purchase = z.strictObject({
  paidBy,
  lines: z
    .array(
      z.strictObject({
        supplyId: z.uuid(),
        pieces: pieces.min(1, 'Say how many pieces came.'),
        minorUnits: z.int().min(0).max(1_000_000_000),
        /** The last day on which they are good, where the pack says one. */
        useBy: bookDay
          .refine((day) => day < '2200-01-01', 'Nothing of this store is good for that long.')
          .nullable()
          .default(null),
      }),
    )
    .min(1, 'Say what was bought.')
    .max(100),
  currency,
  onDay: bookDay.optional(),
  note,
});
export type Purchase = z.infer<typeof purchase>;

/** What is there, and what the book said when it was counted. */
export const supplyCount = z.strictObject({ countedPieces: pieces, bookPieces: pieces, reason });
export type SupplyCount = z.infer<typeof supplyCount>;
