import { assert, assertWhole, type Fraction, fraction } from '@sheafbook/units';

/** Below this many households no figure over them is shown. Units: households. Errors: none. Source: our own rule of privacy. */
export const LEAST_HOUSEHOLDS = 5;

/** A figure over several households, or that it is held back. Units: those of the values. Errors: none by itself. */
export type GroupTotal =
  | {
      readonly isShown: true;
      readonly households: number;
      readonly total: number;
      readonly mean: Fraction;
      /** The middle value, or the mean of the two in the middle. */
      readonly median: Fraction;
    }
  | { readonly isShown: false };

/** One cell of a table whose cells share out all households. Units: those of the values. Errors: none by itself. */
export type TotalCell = { readonly key: string; readonly values: readonly number[] };

/**
 * Adds one value of each household, or holds the figure back when too few are in it.
 * Units: whole values of one unit, one a household. A figure that is held back says nothing, not even how many it is over.
 * Errors: AssertionError when a value is not whole or the least number of households is below 1.
 */
export function groupTotals(
  values: readonly number[],
  minimumHouseholds: number = LEAST_HOUSEHOLDS,
): GroupTotal {
  assert(minimumHouseholds >= 1, 'a figure needs at least one household');
  for (const value of values) assertWhole(value, 'value');
  if (values.length < minimumHouseholds) return { isShown: false };
  const total = values.reduce((sum, value) => sum + value, 0);
  const mean = fraction(total, values.length);
  return { isShown: true, households: values.length, total, mean, median: medianOf(values) };
}

function medianOf(values: readonly number[]): Fraction {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (place: number): number => sorted[place] ?? 0;
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? fraction(at(half)) : fraction(at(half - 1) + at(half), 2);
}

/**
 * The cells of a table beside its total, holding back so many that none can be found by subtraction: while those
 * held back are one cell, or hold too few households together, the next smallest cell is held back too.
 * Units: as groupTotals. Shape: one figure a cell, in the same order; ties hold back the earlier cell first.
 * Errors: as groupTotals; AssertionError when a key stands twice.
 */
export function groupTotalsTable(
  cells: readonly TotalCell[],
  minimumHouseholds: number = LEAST_HOUSEHOLDS,
): {
  readonly cells: readonly { readonly key: string; readonly figure: GroupTotal }[];
  readonly total: GroupTotal;
} {
  assert(new Set(cells.map((cell) => cell.key)).size === cells.length, 'a key stands once in a table');
  const held = heldBack(cells, minimumHouseholds);
  const figures = cells.map(({ key, values }) => {
    const figure = groupTotals(values, minimumHouseholds);
    return { key, figure: held.has(key) ? ({ isShown: false } as const) : figure };
  });
  return {
    cells: figures,
    total: groupTotals(
      cells.flatMap((cell) => cell.values),
      minimumHouseholds,
    ),
  };
}

function heldBack(cells: readonly TotalCell[], minimumHouseholds: number): ReadonlySet<string> {
  const bySize = cells.toSorted((a, b) => a.values.length - b.values.length);
  const held: TotalCell[] = bySize.filter((cell) => cell.values.length < minimumHouseholds);
  for (const next of bySize.slice(held.length)) {
    if (held.length === 0 || !isFoundBySubtraction(held, minimumHouseholds)) break;
    held.push(next);
  }
  return new Set(held.map((cell) => cell.key));
}

function isFoundBySubtraction(held: readonly TotalCell[], minimumHouseholds: number): boolean {
  const withSome = held.filter((cell) => cell.values.length > 0);
  const households = withSome.reduce((sum, cell) => sum + cell.values.length, 0);
  return households > 0 && (withSome.length < 2 || households < minimumHouseholds);
}
