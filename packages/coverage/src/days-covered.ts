import type { Fraction } from '@sheafbook/units';

/** What one eater eats of the stock in question. Units: any amount a day, such as grams. Errors: none by itself. */
export type EaterRate = { readonly eaterId: string; readonly perDay: Fraction };

/**
 * A lot and the eaters who may eat it.
 * Units: `amount` in the unit of the rates; `daysLeft` in whole days from tomorrow, null when no day ends it.
 * Errors: none by itself.
 */
export type EdibleLot = {
  readonly lotId: string;
  readonly amount: Fraction | bigint;
  readonly daysLeft: number | null;
  readonly eaterIds: readonly string[];
};

/** Exact days, or that nothing is eaten and so nothing ends. Units: days. Errors: none. */
export type Days = Fraction | 'no-end';

/** What daysCovered finds. Units: days, and amounts in the unit of the rates. Errors: none by itself. */
export type DaysCovered = {
  readonly days: Days;
  readonly wholeDays: number | null;
  readonly limitingEaterIds: readonly string[];
  readonly atRisk: readonly { readonly lotId: string; readonly amount: Fraction }[];
  readonly naiveDays: Days;
  readonly endsByEater: readonly { readonly eaterId: string; readonly days: Days }[];
};

export function daysCovered(input: {
  readonly rates: readonly EaterRate[];
  readonly lots: readonly EdibleLot[];
}): DaysCovered {
  throw new Error(`not written yet for ${input.lots.length} lots`);
}
