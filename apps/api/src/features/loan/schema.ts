import { z } from 'zod';
import { instant, minorUnitsOrNone } from '../buy/schema.ts';
import { note, reason } from '../money/schema.ts';

const ticks = z
  .array(z.strictObject({ partId: z.uuid(), pieces: z.int().min(0).max(1000) }))
  .max(100)
  .refine((parts) => new Set(parts.map(({ partId }) => partId)).size === parts.length, {
    message: 'Tick each part once.',
  });
const signed = z.string().trim().min(1, 'Whoever ticks the parts signs with a name.').max(120);
const money = z.enum(['bank', 'cash', 'balance']);
export type Money = z.infer<typeof money>;

/** When it happened at the shed door; what waited on a phone comes later. */
const happenedAt = instant.optional();

export const handOutWish = z.strictObject({
  parts: ticks,
  takenBy: signed,
  /** Where the deposit comes from; the balance needs no keeper. */
  depositFrom: money.default('balance'),
  note,
  happenedAt,
});
export type HandOutWish = z.infer<typeof handOutWish>;

const uses = z.int().min(0).max(1_000_000).default(1);
const condition = z.enum(['ready', 'dirty', 'broken']);

export const takeBackWish = z.strictObject({
  parts: ticks,
  broughtBy: signed,
  condition,
  note,
  /** Cans closed, or whatever service is counted by. */
  uses,
  damageMinorUnits: z.int().nonnegative('An amount is not below zero.').default(0),
  refundTo: money.default('balance'),
  happenedAt,
});
export type TakeBackWish = z.infer<typeof takeBackWish>;

export const damageWish = z.strictObject({
  minorUnits: minorUnitsOrNone.min(1, 'Say what the damage costs.'),
  /** What is damaged; it stands on the household's statement. */
  note: reason,
});
export type DamageWish = z.infer<typeof damageWish>;

export const handOnWish = z.strictObject({
  parts: ticks,
  /** Whoever takes it ticks the parts; what is missing was lost before. */
  takenBy: signed,
  broughtBy: signed,
  isCleaned: z.literal(true, 'It is handed on clean, or it comes back first.'),
  note,
  uses,
  happenedAt,
});
export type HandOnWish = z.infer<typeof handOnWish>;

export const swapWish = z.strictObject({ version: z.int().positive() });
export type SwapWish = z.infer<typeof swapWish>;

export const loanQuery = z.strictObject({ state: z.enum(['out', 'all']).default('out') });
export type LoanQuery = z.infer<typeof loanQuery>;
