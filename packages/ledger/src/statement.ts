import { assert, assertWhole } from '@sheafbook/units';
import { type SignInWords, signInWords } from './balance.ts';

/**
 * One movement on a household's balance, as a statement needs it.
 * Units: minor units, a charge above zero and a payment or credit below. `onDay` is the day it belongs to, `recordedAt`
 * the UTC instant it was written down, `entryNo` the storehouse's running number, `causeId` the buy, session or loan
 * that its link leads to. A caller's own further fields are carried through. Errors: none.
 */
export type BalanceLine = {
  readonly entryNo: number;
  readonly onDay: string;
  readonly recordedAt: string;
  readonly what: string;
  readonly causeId: string | null;
  readonly amountMinorUnits: number;
};

/** A deposit that is held for one buy. Units: minor units, held above zero. Errors: none. */
export type HeldDeposit = { readonly buyId: string; readonly amountMinorUnits: number };

/** A line as printed: one of charge and payment is zero. Units: minor units. Errors: none. */
export type StatementLine<Line extends BalanceLine = BalanceLine> = Line & {
  readonly chargeMinorUnits: number;
  readonly paymentMinorUnits: number;
  readonly balanceMinorUnits: number;
};

/** A household's statement. Units: minor units; a balance above zero is owed to the storehouse. Errors: none. */
export type Statement<Line extends BalanceLine = BalanceLine> = {
  readonly openingMinorUnits: number;
  readonly lines: readonly StatementLine<Line>[];
  readonly chargesMinorUnits: number;
  readonly paymentsMinorUnits: number;
  readonly closingMinorUnits: number;
  readonly sign: SignInWords;
  readonly depositsHeld: readonly HeldDeposit[];
  readonly depositsHeldMinorUnits: number;
};

/**
 * Builds a statement that can be re-added by hand: charges less payments plus opening is closing. Lines stand by day,
 * then by entry number, then as given. Deposits are shown beside the balance and are no part of it.
 * Units: minor units. Errors: AssertionError when an amount is not whole, a line moves nothing, or a deposit is not
 * whole and ≥ 0. Source: job map 4.6.
 */
export function buildStatement<Line extends BalanceLine>(input: {
  readonly openingMinorUnits: number;
  readonly lines: readonly Line[];
  readonly depositsHeld: readonly HeldDeposit[];
}): Statement<Line> {
  assertWhole(Math.abs(input.openingMinorUnits), 'openingMinorUnits');
  let balanceMinorUnits = input.openingMinorUnits;
  const lines = sortLines(input.lines).map((line) => {
    assertWhole(Math.abs(line.amountMinorUnits), 'amountMinorUnits');
    assert(line.amountMinorUnits !== 0, 'a line of a statement needs an amount other than zero');
    balanceMinorUnits += line.amountMinorUnits;
    const chargeMinorUnits = Math.max(0, line.amountMinorUnits);
    const paymentMinorUnits = Math.max(0, -line.amountMinorUnits);
    return { ...line, chargeMinorUnits, paymentMinorUnits, balanceMinorUnits };
  });
  return {
    openingMinorUnits: input.openingMinorUnits,
    lines,
    chargesMinorUnits: lines.reduce((sum, line) => sum + line.chargeMinorUnits, 0),
    paymentsMinorUnits: lines.reduce((sum, line) => sum + line.paymentMinorUnits, 0),
    closingMinorUnits: balanceMinorUnits,
    sign: signInWords(balanceMinorUnits),
    depositsHeld: input.depositsHeld,
    depositsHeldMinorUnits: sumDeposits(input.depositsHeld),
  };
}

function sortLines<Line extends BalanceLine>(lines: readonly Line[]): Line[] {
  return lines.toSorted((a, b) => (a.onDay === b.onDay ? a.entryNo - b.entryNo : a.onDay < b.onDay ? -1 : 1));
}

function sumDeposits(deposits: readonly HeldDeposit[]): number {
  for (const deposit of deposits) assertWhole(deposit.amountMinorUnits, 'amountMinorUnits');
  return deposits.reduce((sum, deposit) => sum + deposit.amountMinorUnits, 0);
}
