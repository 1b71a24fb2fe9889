import { assert, assertWhole } from '@sheafbook/units';
import { type AccountKey, accountKeyText, CURRENCY } from '../account-key.ts';
import { chartLine } from '../chart.ts';
import {
  commonStockAccount,
  householdAccount,
  moneyAccount,
  storeFundAccount,
  type Till,
  tillAccount,
} from '../money-accounts.ts';
import { debitCredit, type MovementDraft, withoutZeroShares } from '../movement-draft.ts';
import { countedOtherwise } from './counted.ts';

/**
 * Common stock is sold to a household at cost, with the margin the group voted, if any. Dr 1100, Cr 1400 for the cost;
 * Dr 1100, Cr 3000 for the margin. The grams change owner by `ownerChanged` in the same entry.
 * Units: minor units. Errors: AssertionError when an amount is not whole and ≥ 0, or both are zero.
 */
export function commonStockSold(event: {
  readonly householdId: string;
  readonly causeId: string;
  readonly costMinorUnits: number;
  readonly marginMinorUnits?: number;
}): MovementDraft[] {
  const parts = withoutZeroShares([
    { credit: commonStockAccount(event.causeId), amountMinorUnits: event.costMinorUnits },
    { credit: storeFundAccount(), amountMinorUnits: event.marginMinorUnits ?? 0 },
  ]);
  assert(parts.length > 0, 'a sale needs a cost or a margin');
  const taker = householdAccount(event.householdId);
  return parts.map(({ credit, amountMinorUnits }) => debitCredit({ debit: taker, credit, amountMinorUnits }));
}

/**
 * Common stock is given away, at cost. Dr 3010, Cr 1400.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function commonStockGiven(event: {
  readonly causeId: string;
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  return [
    debitCredit({
      debit: moneyAccount('given_value'),
      credit: commonStockAccount(event.causeId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A count found other than the book says of common stock, and the difference is booked at cost: what is missing is a
 * loss, what is over takes a loss back. Dr 5000, Cr 1400, or the other way round; the grams move by `reweighed` in the
 * same entry. Nothing when the difference is worth less than a minor unit.
 * Units: minor units, below zero when stock is missing. Errors: AssertionError unless the amount is whole.
 * Source: the accounts are the job map's (4.4); which of them is common practice, no source.
 */
export function commonStockCounted(event: {
  readonly causeId: string;
  readonly differenceMinorUnits: number;
}): MovementDraft[] {
  const { causeId, differenceMinorUnits } = event;
  const accounts = { stock: commonStockAccount(causeId), losses: moneyAccount('losses') };
  return countedOtherwise(accounts, differenceMinorUnits);
}

/**
 * Someone gives the storehouse money. Dr 1000 or 1010, Cr 4020; the year's end carries it into the store fund.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function fundReceived(event: {
  readonly amountMinorUnits: number;
  readonly till: Till;
}): MovementDraft[] {
  return [
    debitCredit({
      debit: tillAccount(event.till),
      credit: moneyAccount('cash_gifts'),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * The storehouse pays for repairs and parts. Dr 5020, Cr 1000 or 1010; the year's end carries it into the store fund.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function fundSpent(event: {
  readonly amountMinorUnits: number;
  readonly till: Till;
  readonly itemId?: string | null | undefined;
}): MovementDraft[] {
  const repairs = moneyAccount('repairs', { causeId: event.itemId ?? null });
  return [
    debitCredit({
      debit: repairs,
      credit: tillAccount(event.till),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A balance brought over from the book kept before this one, against the store fund. Above zero: Dr the account,
 * Cr 3000; below zero the other way; nothing for zero.
 * Units: minor units, signed as `balanceOf` signs them. Errors: AssertionError for an amount that is not whole, or for
 * the store fund itself.
 */
export function openingBalance(event: {
  readonly account: AccountKey;
  readonly balanceMinorUnits: number;
}): MovementDraft[] {
  return carried(event.account, storeFundAccount(), event.balanceMinorUnits);
}

/**
 * The year's income and expenses end in the store fund: every account of the 4000s and 5000s is brought to zero.
 * Units: minor units, signed as `balanceOf` signs them. Errors: AssertionError for an account of another class, or for
 * an amount that is not whole.
 */
export function yearEnd(event: {
  readonly accounts: readonly { readonly key: AccountKey; readonly balanceMinorUnits: number }[];
}): MovementDraft[] {
  const sortKey = (key: AccountKey) => accountKeyText(CURRENCY, key);
  return event.accounts
    .toSorted((a, b) => (sortKey(a.key) < sortKey(b.key) ? -1 : 1))
    .flatMap(({ key, balanceMinorUnits }) => {
      assert(/^[45]/.test(chartLine(key.kind).number), `${key.kind} does not end with the year`);
      return carried(storeFundAccount(), key, balanceMinorUnits);
    });
}

function carried(debit: AccountKey, credit: AccountKey, balanceMinorUnits: number): MovementDraft[] {
  assertWhole(Math.abs(balanceMinorUnits), 'balanceMinorUnits');
  if (balanceMinorUnits === 0) return [];
  return balanceMinorUnits > 0
    ? [debitCredit({ debit, credit, amountMinorUnits: balanceMinorUnits })]
    : [debitCredit({ debit: credit, credit: debit, amountMinorUnits: -balanceMinorUnits })];
}
