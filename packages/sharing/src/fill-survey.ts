import type { Solver } from '@sheafbook/solve';
import { addFractions, compareText, type Fraction, fraction, sumOf } from '@sheafbook/units';
import { type BagCount, listBagCounts } from './fill-bag-counts.ts';
import { type HopefulLine, LineCandidates } from './fill-candidates.ts';
import { allowedAt, leastFreightPerGram, totalOrder } from './fill-ceilings.ts';
import type { FillLine, FillRequest } from './fill-request.ts';
import { leastFreightMinorUnits } from './freight.ts';

/**
 * All bag counts of all lines, and who could take part in each. Lines stand in the order of their names, so
 * that the order they were typed in decides nothing.
 */
export type Survey = {
  readonly request: FillRequest;
  /** For lines by themselves: everyone whose ceiling would hold if delivery were free. */
  readonly aloneLines: readonly HopefulLine[];
  /**
   * For lines together: everyone whose ceiling would hold at the least freight per gram that any order pays.
   */
  readonly lines: readonly HopefulLine[];
  readonly leastFreight: number;
  readonly canReachMinimum: boolean;
  /** False when some line had more bag counts than could be listed one by one. */
  readonly isComplete: boolean;
};

export function surveyLines(request: FillRequest): Survey {
  const sorted = request.lines.toSorted((a, b) => compareText(a.lineId, b.lineId));
  const listed = sorted.map((line) => ({ line, ...listBagCounts(line) }));
  const most = {
    goods: sumOf(listed.map(({ counts }) => counts.reduce((top, count) => Math.max(top, count.goods), 0))),
    grams: sumOf(listed.map(({ counts }) => counts.reduce((top, count) => Math.max(top, count.grams), 0))),
  };
  const freightPerGram = leastFreightPerGram(request, most);
  const pricedFrom = (freight: (count: BagCount) => Fraction): HopefulLine[] =>
    listed.map(({ line, counts }) => ({
      line,
      counts: counts.map((count) => ({ count, allowed: listHopefuls(line, count, freight) })),
    }));
  const ownFreight = (count: BagCount) => {
    const { freight, grams } = totalOrder(request, [count]);
    return fraction(freight, grams);
  };
  return {
    request,
    aloneLines: pricedFrom(() => fraction(0)),
    // A single line knows its freight: nothing else moves its price.
    lines: pricedFrom(sorted.length === 1 ? ownFreight : () => freightPerGram),
    leastFreight: leastFreightMinorUnits(request.freight, most.goods, most.grams),
    canReachMinimum: most.goods >= request.minimumGoodsMinorUnits && most.grams >= request.minimumGrams,
    isComplete: listed.every((line) => line.isComplete),
  };
}

function listHopefuls(line: FillLine, count: BagCount, freight: (count: BagCount) => Fraction): number[] {
  const hasCeilings = line.pledges.some((pledge) => pledge.ceiling !== null);
  if (count.bagsInAll === 0 || !hasCeilings) return [...line.pledges.keys()];
  return allowedAt(line, addFractions(fraction(count.goods, count.grams), freight(count)));
}

/** A surveyed line without some of its pledges. */
export function leaveOut({ line, counts }: HopefulLine, dropped: ReadonlySet<number>): HopefulLine {
  const without = (allowed: readonly number[]) => allowed.filter((position) => !dropped.has(position));
  return { line, counts: counts.map(({ count, allowed }) => ({ count, allowed: without(allowed) })) };
}

export function openCandidates(lines: readonly HopefulLine[], solver: Solver): LineCandidates[] {
  return lines.map((line) => new LineCandidates(line, solver));
}
