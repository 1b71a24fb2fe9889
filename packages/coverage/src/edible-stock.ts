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

/** Who eats and what there is. Units: as in EaterRate and EdibleLot. Errors: none by itself. */
export type DaysCoveredInput = { readonly rates: readonly EaterRate[]; readonly lots: readonly EdibleLot[] };
