import { assert, assertWhole } from '@sheafbook/units';
import {
  type AccountKey,
  accountKeyText,
  CURRENCY,
  lotUnit,
  supplyUnit,
  type UnitKey,
} from './account-key.ts';

/**
 * A movement before it is posted: one positive whole amount of one unit from a source to a destination. In an
 * accountant's words the destination is debited and the source credited, so an entry balances by its very shape.
 * Units: `amount` in the unit's own (minor units, grams, pieces). Errors: none.
 */
export type MovementDraft = {
  readonly unit: UnitKey;
  readonly source: AccountKey;
  readonly destination: AccountKey;
  readonly amount: number;
};

/**
 * Drafts one movement of money.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive and the two accounts differ.
 */
export function debitCredit(posting: {
  readonly debit: AccountKey;
  readonly credit: AccountKey;
  readonly amountMinorUnits: number;
}): MovementDraft {
  const { debit, credit, amountMinorUnits } = posting;
  return draft({ unit: CURRENCY, source: credit, destination: debit, amount: amountMinorUnits });
}

/**
 * Drafts one movement of a lot's grams between two mass accounts.
 * Units: grams. Errors: AssertionError unless the amount is whole and positive and the two accounts differ.
 */
export function moveGrams(move: {
  readonly lotId: string;
  readonly from: AccountKey;
  readonly to: AccountKey;
  readonly amountGrams: number;
}): MovementDraft {
  return draft({
    unit: lotUnit(move.lotId),
    source: move.from,
    destination: move.to,
    amount: move.amountGrams,
  });
}

/**
 * Drafts one movement of a supply's pieces.
 * Units: pieces. Errors: AssertionError unless the amount is whole and positive and the two accounts differ.
 */
export function movePieces(move: {
  readonly supplyId: string;
  readonly from: AccountKey;
  readonly to: AccountKey;
  readonly pieces: number;
}): MovementDraft {
  const { supplyId, from, to, pieces } = move;
  return draft({ unit: supplyUnit(supplyId), source: from, destination: to, amount: pieces });
}

/**
 * The movements that undo others: each goes back where it came from, in the same order.
 * Units: as drafted. Errors: none.
 */
export function reverse(drafts: readonly MovementDraft[]): MovementDraft[] {
  return drafts.map(({ unit, source, destination, amount }) => ({
    unit,
    source: destination,
    destination: source,
    amount,
  }));
}

/**
 * Drops the shares that came out at nothing, since a movement of nothing is none.
 * Units: any. Errors: AssertionError when a share is not whole and ≥ 0.
 */
export function withoutZeroShares<Share extends { readonly amountMinorUnits: number }>(
  shares: readonly Share[],
): Share[] {
  for (const share of shares) assertWhole(share.amountMinorUnits, 'amountMinorUnits');
  return shares.filter((share) => share.amountMinorUnits > 0);
}

function draft(movement: MovementDraft): MovementDraft {
  assertWhole(movement.amount, 'amount');
  assert(movement.amount > 0, 'a movement needs an amount above zero');
  const { unit, source, destination } = movement;
  assert(
    accountKeyText(unit, source) !== accountKeyText(unit, destination),
    'a movement needs two different accounts',
  );
  return movement;
}
