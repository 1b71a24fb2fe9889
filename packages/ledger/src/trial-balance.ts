import type { MoneyKind } from './account-key.ts';
import { balanceOf } from './balance.ts';
import { CHART, chartLine } from './chart.ts';

/** A money account's kind and running totals. Units: minor units. Errors: none. */
export type MoneyTotals = {
  readonly kind: MoneyKind;
  readonly inflow: number;
  readonly outflow: number;
};

/** One number of the chart in the trial balance. Units: minor units, each ≥ 0. Errors: none. */
export type TrialBalanceRow = {
  readonly kind: MoneyKind;
  readonly number: string;
  readonly name: string;
  readonly debitMinorUnits: number;
  readonly creditMinorUnits: number;
};

/** The treasurer's trial balance. Units: minor units. `agrees` when the columns have one total. Errors: none. */
export type TrialBalance = {
  readonly rows: readonly TrialBalanceRow[];
  readonly debitMinorUnits: number;
  readonly creditMinorUnits: number;
  readonly agrees: boolean;
};

/**
 * Adds up the accounts by chart number. Within a number the accounts are not set off against each other: what
 * households owe stands in one column, what they are owed in the other. All numbers of the chart appear, in order.
 * Units: minor units. Errors: AssertionError for a kind that holds no money.
 */
export function trialBalance(accounts: readonly MoneyTotals[]): TrialBalance {
  const debits = new Map<string, number>();
  const credits = new Map<string, number>();
  for (const account of accounts) {
    const { number } = chartLine(account.kind);
    const balanceMinorUnits = balanceOf(account);
    const column = balanceMinorUnits > 0 ? debits : credits;
    column.set(number, (column.get(number) ?? 0) + Math.abs(balanceMinorUnits));
  }
  const rows = CHART.map(({ kind, number, name }) => ({
    kind,
    number,
    name,
    debitMinorUnits: debits.get(number) ?? 0,
    creditMinorUnits: credits.get(number) ?? 0,
  }));
  const debitMinorUnits = rows.reduce((sum, row) => sum + row.debitMinorUnits, 0);
  const creditMinorUnits = rows.reduce((sum, row) => sum + row.creditMinorUnits, 0);
  return { rows, debitMinorUnits, creditMinorUnits, agrees: debitMinorUnits === creditMinorUnits };
}
