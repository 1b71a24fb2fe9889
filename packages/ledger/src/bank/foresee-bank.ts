import { sumOf } from '@sheafbook/units';

/** Money that is expected by a day. Units: minor units, ≥ 0. Errors: none. */
export type ExpectedMoney = { readonly dueOn: string; readonly minorUnits: number };

/** Whether the bank can pay what is due by a day. Units: minor units; `shortMinorUnits` ≥ 0. Errors: none. */
export type BankForecast = {
  readonly receiptsMinorUnits: number;
  readonly paymentsMinorUnits: number;
  readonly leftMinorUnits: number;
  readonly shortMinorUnits: number;
};

/**
 * Whether the bank can pay what is due by a day: what it holds, with what should come in by then taken as certain, less
 * what must go out by then.
 * Units: minor units. Errors: none. Source: job map 3.2, question 4.
 */
export function foreseeBank(input: {
  readonly byOn: string;
  readonly bankMinorUnits: number;
  readonly receipts: readonly ExpectedMoney[];
  readonly payments: readonly ExpectedMoney[];
}): BankForecast {
  const due = (rows: readonly ExpectedMoney[]) =>
    sumOf(rows.filter(({ dueOn }) => dueOn <= input.byOn).map(({ minorUnits }) => minorUnits));
  const [receiptsMinorUnits, paymentsMinorUnits] = [due(input.receipts), due(input.payments)];
  const leftMinorUnits = input.bankMinorUnits + receiptsMinorUnits - paymentsMinorUnits;
  return {
    receiptsMinorUnits,
    paymentsMinorUnits,
    leftMinorUnits,
    shortMinorUnits: Math.max(0, -leftMinorUnits),
  };
}
