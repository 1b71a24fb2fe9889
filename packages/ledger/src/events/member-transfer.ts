import { assert, assertWhole } from '@sheafbook/units';
import { massAccount } from '../mass-account.ts';
import { householdAccount } from '../money-accounts.ts';
import { debitCredit, type MovementDraft, moveGrams } from '../movement-draft.ts';

/** Grams that change hands in a transfer, and the vessels they leave and reach. Units: grams. Errors: none. */
export type TransferredGrams = {
  readonly lotId: string;
  readonly fromVesselId: string;
  readonly toVesselId: string;
  readonly amountGrams: number;
};

/**
 * A member lets another have food: price and grams in one entry, so that neither is booked without the other.
 * Dr 1100 of the taker, Cr 1100 of the giver; the grams go the same way round. A price of 0 moves grams alone.
 * Units: minor units and grams. Errors: AssertionError when the two are one household, an amount is not whole, grams
 * are not positive, or no grams move. Source: ledger-notes 6.12.
 */
export function memberTransfer(event: {
  readonly giverId: string;
  readonly takerId: string;
  readonly priceMinorUnits: number;
  readonly mass: readonly TransferredGrams[];
}): MovementDraft[] {
  assertWhole(event.priceMinorUnits, 'priceMinorUnits');
  assert(event.giverId !== event.takerId, 'a transfer needs two households');
  assert(event.mass.length > 0, 'a transfer needs grams that change hands');
  const [taker, giver] = [householdAccount(event.takerId), householdAccount(event.giverId)];
  const money =
    event.priceMinorUnits > 0
      ? [debitCredit({ debit: taker, credit: giver, amountMinorUnits: event.priceMinorUnits })]
      : [];
  const mass = event.mass.map(({ lotId, fromVesselId, toVesselId, amountGrams }) =>
    moveGrams({
      lotId,
      from: massAccount(fromVesselId, event.giverId),
      to: massAccount(toVesselId, event.takerId),
      amountGrams,
    }),
  );
  return [...money, ...mass];
}
