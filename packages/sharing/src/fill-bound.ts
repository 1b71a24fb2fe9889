import { sumOf } from '@sheafbook/units';
import type { LineCase } from './fill-case.ts';
import { leastServed, splitPledges } from './fill-case.ts';
import type { FillPledge } from './fill-request.ts';

/**
 * What is plain about a line's key (levels 1 to 5) before any solving: no answer for this bag count has a
 * smaller key. `undefined` when those bags cannot be filled at all.
 */
export function boundKey(lineCase: LineCase): number[] | undefined {
  const { taking, left } = splitPledges(lineCase);
  const { units, mostSpare } = lineCase.count;
  const spare = Math.max(0, units - sumOf(taking.map((pledge) => pledge.most)));
  if (spare > mostSpare) return undefined;
  const gap = Math.abs(units - spare - sumOf(taking.map((pledge) => pledge.wanted)));
  return [
    left.length + fewestDrops(taking, units - spare),
    spare > 0 ? 1 : 0,
    spare,
    gap + sumOf(left.map((pledge) => pledge.wanted)),
    Math.max(0, ...left.map((pledge) => pledge.wanted), Math.ceil(gap / (taking.length || 1))),
  ];
}

/** Leaving out those with the largest least amounts first is the fewest that any choice must leave out. */
function fewestDrops(taking: readonly FillPledge[], units: number): number {
  const largestFirst = taking.map(leastServed).toSorted((a, b) => b - a);
  let needed = sumOf(largestFirst);
  const enough = largestFirst.findIndex((least) => {
    if (needed <= units) return true;
    needed -= least;
    return false;
  });
  return enough === -1 ? taking.length : enough;
}
