import { assert, assertWhole } from '@sheafbook/units';
import { assertInterval, type Interval, merged } from './interval.ts';
import { LENDING_RULES } from './loan-rules.ts';

const HOUR = 3_600_000;

/** A share of something counted, as both of its figures. Units: those of `of`. Errors: none by itself. */
export type Share = { readonly some: number; readonly of: number };

/** A piece of equipment over a span of time. Units: milliseconds. Errors: none by itself. */
export type PieceInUse = {
  /** Since when it is there to be lent; before that it can't be used. */
  readonly sinceMs: number;
  /** When it was out with somebody or at work on a packing day. */
  readonly used: readonly Interval[];
};

/**
 * For how much of a span pieces that are alike were in use: the time they were out, of the time they were there. Time for
 * cleaning and the way back is no use. What lies outside the span, or before a piece was there, counts for nothing.
 * Units: whole hours, rounded half up. Errors: AssertionError when an interval is empty.
 * Source: job map 3.4, question 11; that cleaning is no use is common practice, no source.
 */
export function usedHours(pieces: readonly PieceInUse[], span: Interval): Share {
  assertInterval(span);
  let [someMs, ofMs] = [0, 0];
  for (const { sinceMs, used } of pieces) {
    used.forEach(assertInterval);
    const startMs = Math.max(span.startMs, sinceMs);
    if (startMs >= span.endMs) continue;
    ofMs += span.endMs - startMs;
    for (const one of merged(used))
      someMs += Math.max(0, Math.min(one.endMs, span.endMs) - Math.max(one.startMs, startMs));
  }
  return { some: Math.round(someMs / HOUR), of: Math.round(ofMs / HOUR) };
}

/** A loan as far as it tells whether it was late. Units: milliseconds; null while it is out. Errors: none by itself. */
export type LoanTimes = { readonly dueMs: number; readonly backMs: number | null };

/**
 * How many of the loans that fell due in a span were late: brought back, or still out, after the grace. A thing's own figure,
 * never a person's.
 * Units: loans. Errors: AssertionError when the span is empty.
 * Source: job map 3.4, question 12; the grace is that of the late fee.
 */
export function lateLoans(loans: readonly LoanTimes[], span: Interval): Share {
  assertInterval(span);
  const due = loans.filter(({ dueMs }) => dueMs >= span.startMs && dueMs < span.endMs);
  const graceMs = LENDING_RULES.graceHours * HOUR;
  const late = due.filter(({ dueMs, backMs }) => (backMs ?? span.endMs) > dueMs + graceMs);
  return { some: late.length, of: due.length };
}

/**
 * What each use cost the group: repairs and parts paid, less what borrowers paid for them, over the uses. Null where nothing
 * used it, since nothing can be told of no use.
 * Units: minor units, rounded half away from zero; below zero where borrowers paid more than was repaired yet.
 * Errors: AssertionError when the cost is not whole, or the uses are not whole and ≥ 0.
 * Source: job map 3.4, question 13.
 */
export function costPerUse(costMinorUnits: number, uses: number): number | null {
  assert(Number.isSafeInteger(costMinorUnits), 'costMinorUnits is whole');
  assertWhole(uses, 'uses');
  if (uses === 0) return null;
  const each = Math.round(Math.abs(costMinorUnits) / uses);
  return costMinorUnits < 0 && each !== 0 ? -each : each;
}

/** A wish on the waiting list. Units: milliseconds; null while it waits. Errors: none by itself. */
export type WaitedFor = {
  readonly startMs: number;
  readonly endedMs: number | null;
  /** Whether the time that it was offered became its own. */
  readonly isServed: boolean;
};

/**
 * What became of those who waited for a taken time: who got one, who still can, and who went without, since it ended or the
 * time that was wished is over. A refusal that nobody put on the list is known to nobody.
 * Units: wishes; the three add up to all. Errors: none.
 * Source: job map 3.4, question 25; that the list stands for refusals is common practice, no source.
 */
export function waitedFor(
  wishes: readonly WaitedFor[],
  nowMs: number,
): { readonly served: number; readonly waiting: number; readonly without: number } {
  const served = wishes.filter(({ isServed }) => isServed).length;
  const waiting = wishes.filter(
    ({ isServed, endedMs, startMs }) => !isServed && endedMs === null && startMs > nowMs,
  ).length;
  return { served, waiting, without: wishes.length - served - waiting };
}

/**
 * A share as people read it. Null where there is nothing to be a share of.
 * Units: tenths of a percent, rounded half up. Errors: AssertionError when a figure is not whole and ≥ 0, or more than all.
 */
export function tenthsPercent({ some, of }: Share): number | null {
  assertWhole(some, 'some');
  assertWhole(of, 'of');
  assert(some <= of, 'a share is at most all');
  return of === 0 ? null : Math.round((some * 1000) / of);
}
