import { z } from 'zod';
import { amountMinorUnits, note, reason, till } from '../money/schema.ts';

const pieces = z.int().min(0).max(1_000_000).default(0);

/** Tea for the helpers, a bottle of cleaner: what the day cost besides, and who paid for it. */
const sundry = z.strictObject({
  what: z.string().trim().min(1, 'Say what was bought.').max(120),
  minorUnits: amountMinorUnits.max(1_000_000_000),
  paidBy: z.discriminatedUnion('who', [
    z.strictObject({ who: z.literal('household'), householdId: z.uuid() }),
    z.strictObject({ who: z.literal('till'), till }),
  ]),
});

export const settlementWish = z.strictObject({
  supplies: z
    .array(
      z.strictObject({
        supplyId: z.uuid(),
        usedPieces: pieces,
        /** Spoilt because too many were made or by a slip: everybody's. */
        spoiltPieces: pieces,
        /** Spoilt by the machine: the storehouse's. */
        spoiltByMachinePieces: pieces,
      }),
    )
    .max(200),
  equipmentFees: z
    .array(z.strictObject({ itemId: z.uuid(), minorUnits: amountMinorUnits.max(1_000_000_000) }))
    .max(50)
    .default([]),
  sundries: z.array(sundry).max(50).default([]),
  note,
});
export type SettlementWish = z.infer<typeof settlementWish>;

/** What was shown beforehand comes along, so that nothing else is posted than what somebody looked at. */
export const settlementPosting = settlementWish.extend({ seen: z.string().length(64) });
export type SettlementPosting = z.infer<typeof settlementPosting>;

export const undoing = z.strictObject({ reason });
