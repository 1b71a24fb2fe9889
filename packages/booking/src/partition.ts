import { assertInterval, type Interval } from './interval.ts';

/** Something that needs a line or a unit for a time. Units: milliseconds. Errors: none by itself. */
export type Request = Interval & { readonly requestId: string };

/** Which line or unit serves a request. Units: lines from 1. Errors: none by itself. */
export type Assignment = { readonly requestId: string; readonly line: number };

/**
 * The most requests that want something at one moment.
 * Units: requests. Errors: AssertionError when an interval is empty.
 */
export function mostAtOnce(intervals: readonly Interval[]): number {
  intervals.forEach(assertInterval);
  // At one moment an end comes before a start: they touch.
  const edges = intervals
    .flatMap(({ startMs, endMs }) => [
      { atMs: startMs, step: 1 },
      { atMs: endMs, step: -1 },
    ])
    .toSorted((a, b) => a.atMs - b.atMs || a.step - b.step);
  let now = 0;
  let most = 0;
  for (const { step } of edges) {
    now += step;
    most = Math.max(most, now);
  }
  return most;
}

/**
 * The least number of lines that serves all requests, and who stands at which: in the order of their starts each goes to the
 * line that has been free longest, the lowest of those that tie. As many lines are needed as requests overlap at one moment.
 * Units: milliseconds, lines from 1. Shape: in the order of the starts; ties by the order given.
 * Errors: AssertionError when an interval is empty.
 * Source: interval partitioning; Kleinberg and Tardos, Algorithm Design, section 4.1.
 */
export function assignLines(requests: readonly Request[]): {
  readonly lines: number;
  readonly assignments: readonly Assignment[];
} {
  requests.forEach(assertInterval);
  const freeFromMs: number[] = [];
  const assignments = requests
    .toSorted((a, b) => a.startMs - b.startMs)
    .map(({ requestId, startMs, endMs }) => {
      const line = longestFree(freeFromMs, startMs);
      freeFromMs[line] = endMs;
      return { requestId, line: line + 1 };
    });
  return { lines: freeFromMs.length, assignments };
}

/** The line that is free and has been so longest; the next new one when none is. */
function longestFree(freeFromMs: readonly number[], startMs: number): number {
  let best = -1;
  for (const [line, freeMs] of freeFromMs.entries()) {
    if (freeMs > startMs) continue;
    if (best < 0 || freeMs < (freeFromMs[best] ?? 0)) best = line;
  }
  return best < 0 ? freeFromMs.length : best;
}

/**
 * Which single request to move so that the rest fit on so many lines: the shortest one whose going is enough, then the one
 * that was asked for last.
 * Units: lines, milliseconds. Shape: null when all fit, or when no single move is enough.
 * Errors: AssertionError when an interval is empty.
 */
export function moveToFit(requests: readonly Request[], lines: number): string | null {
  if (mostAtOnce(requests) <= lines) return null;
  const enough = requests
    .map((request, position) => ({ request, position }))
    .filter(({ request }) => mostAtOnce(requests.filter((other) => other !== request)) <= lines)
    .toSorted((a, b) => lengthOf(a.request) - lengthOf(b.request) || b.position - a.position);
  return enough[0]?.request.requestId ?? null;
}

const lengthOf = ({ startMs, endMs }: Interval) => endMs - startMs;
