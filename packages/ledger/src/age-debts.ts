import { assertWhole } from '@sheafbook/units';
import { daysBetween } from './calendar.ts';

/** A charge (above zero) or a payment (below zero) with the day it fell due. Units: minor units. Errors: none. */
export type DatedAmount = { readonly dueOn: string; readonly amountMinorUnits: number };

/**
 * A balance by the age of its unpaid charges.
 * Units: minor units, each ≥ 0. The four ages less the credit are the balance. Errors: none.
 */
export type AgedDebt = {
  readonly days0To30MinorUnits: number;
  readonly days31To60MinorUnits: number;
  readonly days61To90MinorUnits: number;
  readonly over90DaysMinorUnits: number;
  readonly creditMinorUnits: number;
  /** The day that the oldest charge not paid in full fell due; null when nothing is owed. */
  readonly owesSinceOn: string | null;
};

/**
 * Ages what a household owes: everything it paid settles its oldest charges first, and what is left of each charge
 * counts by the days since it fell due. A charge that is not due yet counts as 0 days old; what was paid beyond all
 * charges is credit.
 * Units: minor units; days are calendar days. Errors: AssertionError for an amount that is not whole or a text that is
 * no day. Source: job map 3.2, question 2.
 */
export function ageDebts(input: {
  readonly amounts: readonly DatedAmount[];
  readonly todayOn: string;
}): AgedDebt {
  for (const { amountMinorUnits } of input.amounts)
    assertWhole(Math.abs(amountMinorUnits), 'amountMinorUnits');
  const charges = input.amounts
    .filter((amount) => amount.amountMinorUnits > 0)
    .toSorted((a, b) => daysBetween(b.dueOn, a.dueOn));
  let creditMinorUnits = sumPayments(input.amounts);
  const ages = [0, 0, 0, 0] as [number, number, number, number];
  let owesSinceOn: string | null = null;
  for (const charge of charges) {
    const paidMinorUnits = Math.min(creditMinorUnits, charge.amountMinorUnits);
    creditMinorUnits -= paidMinorUnits;
    if (paidMinorUnits < charge.amountMinorUnits) owesSinceOn ??= charge.dueOn;
    ages[ageOf(daysBetween(charge.dueOn, input.todayOn))] += charge.amountMinorUnits - paidMinorUnits;
  }
  return {
    days0To30MinorUnits: ages[0],
    days31To60MinorUnits: ages[1],
    days61To90MinorUnits: ages[2],
    over90DaysMinorUnits: ages[3],
    creditMinorUnits,
    owesSinceOn,
  };
}

function sumPayments(amounts: readonly DatedAmount[]): number {
  return amounts.reduce((sum, amount) => sum + Math.max(0, -amount.amountMinorUnits), 0);
}

function ageOf(days: number): 0 | 1 | 2 | 3 {
  if (days <= 30) return 0;
  if (days <= 60) return 1;
  return days <= 90 ? 2 : 3;
}
