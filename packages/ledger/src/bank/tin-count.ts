import { assert, assertWhole } from '@sheafbook/units';

/** So many notes or coins of one worth. Units: minor units each. Errors: none. */
export type CountedPieces = { readonly eachMinorUnits: number; readonly count: number };

/**
 * What notes and coins come to.
 * Units: minor units. Errors: AssertionError for a worth or a count that is not whole and ≥ 0, or a sum past 2^53.
 */
export function sumPieces(pieces: readonly CountedPieces[]): number {
  const sum = pieces.reduce((total, { eachMinorUnits, count }) => {
    assertWhole(eachMinorUnits, 'eachMinorUnits');
    assertWhole(count, 'count');
    return total + eachMinorUnits * count;
  }, 0);
  assert(Number.isSafeInteger(sum), 'the tin holds more than can be told exactly');
  return sum;
}

/**
 * The notes and coins in use of a currency, the largest first; none known means that a tin is counted by its total.
 * Units: minor units. Errors: none. Source: the issuing banks' lists, from memory.
 */
export function piecesOf(currency: string): readonly number[] {
  return PIECES[currency] ?? [];
}

const PIECES: Readonly<Record<string, readonly number[]>> = {
  USD: [10_000, 5000, 2000, 1000, 500, 200, 100, 50, 25, 10, 5, 1],
  CAD: [10_000, 5000, 2000, 1000, 500, 200, 100, 25, 10, 5],
  EUR: [20_000, 10_000, 5000, 2000, 1000, 500, 200, 100, 50, 20, 10, 5, 2, 1],
  GBP: [5000, 2000, 1000, 500, 200, 100, 50, 20, 10, 5, 2, 1],
  MXN: [100_000, 50_000, 20_000, 10_000, 5000, 2000, 1000, 500, 200, 100, 50],
};
