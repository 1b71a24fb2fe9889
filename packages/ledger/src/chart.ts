import { assert } from '@sheafbook/units';
import type { MoneyKind } from './account-key.ts';

/** One line of the chart of accounts. Units: none. Errors: none. */
export type ChartLine = {
  readonly kind: MoneyKind;
  readonly number: string;
  readonly name: string;
  readonly normal: 'debit' | 'credit' | 'zero';
};

/**
 * The chart of accounts: the accountant's number and name of each money kind, and the side its balance stands on.
 * `zero` is a clearing account, which closes at nothing.
 * Units: none. Errors: none. Source: job map 4.4.
 */
export const CHART: readonly ChartLine[] = [
  { kind: 'bank', number: '1000', name: 'Bank', normal: 'debit' },
  { kind: 'cash_tin', number: '1010', name: 'Cash tin', normal: 'debit' },
  { kind: 'household', number: '1100', name: 'Household balances', normal: 'debit' },
  { kind: 'supplier_claim', number: '1200', name: 'Supplier claims', normal: 'debit' },
  { kind: 'supplies', number: '1300', name: 'Supplies stock', normal: 'debit' },
  { kind: 'common_stock', number: '1400', name: 'Common food stock', normal: 'debit' },
  { kind: 'equipment', number: '1500', name: 'Equipment at cost', normal: 'debit' },
  { kind: 'supplier', number: '2000', name: 'Suppliers payable', normal: 'credit' },
  { kind: 'buy_deposit', number: '2100', name: 'Buy deposits held', normal: 'credit' },
  { kind: 'loan_deposit', number: '2150', name: 'Equipment deposits held', normal: 'credit' },
  { kind: 'buy_clearing', number: '2200', name: 'Buy clearing', normal: 'zero' },
  { kind: 'session_clearing', number: '2300', name: 'Session clearing', normal: 'zero' },
  { kind: 'store_fund', number: '3000', name: 'Store fund', normal: 'credit' },
  { kind: 'given_value', number: '3010', name: 'Given value', normal: 'debit' },
  { kind: 'line_fees', number: '4000', name: 'Line fees', normal: 'credit' },
  { kind: 'equipment_fees', number: '4010', name: 'Equipment fees', normal: 'credit' },
  { kind: 'cash_gifts', number: '4020', name: 'Cash gifts received', normal: 'credit' },
  { kind: 'losses', number: '5000', name: 'Losses', normal: 'debit' },
  { kind: 'bank_charges', number: '5010', name: 'Bank charges', normal: 'debit' },
  { kind: 'repairs', number: '5020', name: 'Repairs and parts', normal: 'debit' },
  { kind: 'debt_written_off', number: '5030', name: 'Debt written off', normal: 'debit' },
];

/** Finds the chart line of a money kind. Units: none. Errors: AssertionError for a kind that holds no money. */
export function chartLine(kind: string): ChartLine {
  const line = CHART.find((candidate) => candidate.kind === kind);
  assert(line, `the chart has no line for ${kind}`);
  return line;
}
