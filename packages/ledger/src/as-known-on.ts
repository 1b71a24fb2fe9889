import { compareInstants } from './calendar.ts';
import type { BalanceLine } from './statement.ts';

/** The two clocks of a movement: the day it belongs to and the instant it was written down. Units: none. Errors: none. */
export type TwoClocks = { readonly onDay: string; readonly recordedAt: string };

/**
 * Keeps what was known at an instant about a period: it belongs to a day up to the period's last, and was written down
 * by that instant. A payment of March that was keyed in in May is missing from what was known in April.
 * Units: ISO day and UTC instant. Errors: AssertionError for a text that is no UTC instant.
 */
export function asKnownOn<Row extends TwoClocks>(
  rows: readonly Row[],
  knowledge: { readonly throughOn: string; readonly knownAt: string },
): Row[] {
  return rows.filter(
    (row) => row.onDay <= knowledge.throughOn && compareInstants(row.recordedAt, knowledge.knownAt) <= 0,
  );
}

/**
 * Parts a household's whole history into what a period opens with and the period's own lines.
 * Units: minor units; days are ISO days, both ends included. Errors: none.
 */
export function splitPeriod<Line extends BalanceLine>(
  lines: readonly Line[],
  period: { readonly fromOn: string; readonly throughOn: string },
): { openingMinorUnits: number; lines: Line[] } {
  const before = lines.filter((line) => line.onDay < period.fromOn);
  return {
    openingMinorUnits: before.reduce((sum, line) => sum + line.amountMinorUnits, 0),
    lines: lines.filter((line) => line.onDay >= period.fromOn && line.onDay <= period.throughOn),
  };
}
