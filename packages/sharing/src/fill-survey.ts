import type { Solver } from '@sheafbook/solve';
import { addFractions, fraction } from '@sheafbook/units';
import { type BagCount, listBagCounts } from './fill-bag-counts.ts';
import { type HopefulLine, LineCandidates } from './fill-candidates.ts';
import { allowedAt, landedPrice, leastFreightPerGram, totalOrder } from './fill-ceilings.ts';
import { compareNames, sumOf } from './fill-order.ts';
import type { FillLine, FillRequest } from './fill-request.ts';
import { leastFreightMinorUnits } from './freight.ts';

/**
 * All bag counts of all lines, and who could take part in each at the lowest landed price it could have.
 * Lines stand in the order of their names, so that the order they were typed in decides nothing.
 */
export type Survey = {
  readonly request: FillRequest;
  readonly lines: readonly HopefulLine[];
  readonly leastFreight: number;
  /** False when some line had more bag counts than could be listed one by one. */
  readonly isComplete: boolean;
};

export function surveyLines(request: FillRequest): Survey {
  const sorted = request.lines.toSorted((a, b) => compareNames(a.lineId, b.lineId));
  const listed = sorted.map((line) => ({ line, ...listBagCounts(line) }));
  const most = {
    goods: sumOf(listed.map(({ counts }) => Math.max(...counts.map((count) => count.goods)))),
    grams: sumOf(listed.map(({ counts }) => Math.max(...counts.map((count) => count.grams)))),
  };
  const freightPerGram = leastFreightPerGram(request, most);
  const lowestPrice = (count: BagCount) =>
    sorted.length === 1
      ? landedPrice(count, totalOrder(request, [count])) // a single line: nothing else moves its price
      : addFractions(fraction(count.goods, count.grams), freightPerGram);
  const hopefuls = (line: FillLine, count: BagCount): number[] =>
    count.bagsInAll > 0 && line.pledges.some((pledge) => pledge.ceiling !== null)
      ? allowedAt(line, lowestPrice(count))
      : [...line.pledges.keys()];
  return {
    request,
    lines: listed.map(({ line, counts }) => {
      return { line, counts: counts.map((count) => ({ count, allowed: hopefuls(line, count) })) };
    }),
    leastFreight: leastFreightMinorUnits(request.freight, most.goods, most.grams),
    isComplete: listed.every((line) => line.isComplete),
  };
}

/** A surveyed line without some of its pledges. */
export function leaveOut({ line, counts }: HopefulLine, dropped: ReadonlySet<number>): HopefulLine {
  const without = (allowed: readonly number[]) => allowed.filter((position) => !dropped.has(position));
  return { line, counts: counts.map(({ count, allowed }) => ({ count, allowed: without(allowed) })) };
}

export function openCandidates(lines: readonly HopefulLine[], solver: Solver): LineCandidates[] {
  return lines.map((line) => new LineCandidates(line, solver));
}
