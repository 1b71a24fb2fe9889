import type { Solver } from '@sheafbook/solve';
import { assert } from '@sheafbook/units';
import { LineCandidates } from './fill-candidates.ts';
import { keyOf } from './fill-case.ts';
import { isWithinCeiling, landedPrice, meetsMinimum, totalOrder } from './fill-ceilings.ts';
import { chooseTogether } from './fill-choose.ts';
import type { FillRequest } from './fill-request.ts';
import { type Choice, choiceKey, settleChoice } from './fill-search.ts';
import { leaveOut, type Survey } from './fill-survey.ts';
import { searchAlone } from './fill-together.ts';
import { compareUnitPrices, type UnitPrice } from './unit-price.ts';

/** For each line the positions of the pledges taken out of it. */
export type Drops = readonly ReadonlySet<number>[];

export type Found = { readonly choice: Choice; readonly tried: number; readonly isProven: boolean };

/** Fills each line by itself: the sum of the lines' own best choices. */
export function fillAlone(survey: Survey, solver: Solver): Found {
  const filled = survey.aloneLines.map((line) => {
    const candidates = new LineCandidates(line, solver);
    const { best, tried, bound } = searchAlone(candidates);
    assert(best, 'buying nothing is always possible');
    return { ...settleChoice([candidates], best), tried, isProven: bound === undefined };
  });
  const parts = filled.flatMap((line) => line.parts);
  const keys = parts.map((part) => part.allotted.key);
  return {
    choice: { parts, key: choiceKey({ keys, counts: parts.map((part) => part.count) }, null) },
    tried: filled.reduce((sum, line) => sum + line.tried, 0),
    isProven: filled.every((line) => line.isProven),
  };
}

/** Whether the supplier takes the order, and every pledge served is within its ceiling. */
export function isSound(request: FillRequest, choice: Choice): boolean {
  const totals = totalOrder(
    request,
    choice.parts.map((part) => part.count),
  );
  return meetsMinimum(request, totals) && listBroken(request, choice).length === 0;
}

type Broken = { readonly index: number; readonly position: number; readonly ceiling: UnitPrice };

/** The pledges served above their ceiling. */
function listBroken(request: FillRequest, { parts }: Choice): Broken[] {
  const totals = totalOrder(
    request,
    parts.map((part) => part.count),
  );
  return parts.flatMap(({ line, count, allotted }, index) =>
    line.pledges.flatMap((pledge, position) => {
      const isServed = (allotted.units[position] ?? 0) > 0;
      if (!isServed || !pledge.ceiling || isWithinCeiling(pledge, landedPrice(count, totals))) return [];
      return [{ index, position, ceiling: pledge.ceiling }];
    }),
  );
}

/**
 * Fills all lines together without ceilings, and takes out the lowest ceiling that does not hold, one at a
 * time (of equal ones the later pledge), until all hold. It ends because the pledges only get fewer.
 */
export function fillByDrops(
  survey: Survey,
  solver: Solver,
): { readonly choice: Choice; readonly drops: Drops } {
  const drops = survey.lines.map(() => new Set<number>());
  while (true) {
    const lines = survey.aloneLines.map((line, index) => leaveOut(line, drops[index] ?? new Set()));
    const choice = chooseTogether(survey.request, lines, solver);
    const [lowest] = listBroken(survey.request, choice)
      .toReversed()
      .toSorted((a, b) => compareUnitPrices(a.ceiling, b.ceiling));
    if (!lowest) return { choice, drops };
    drops[lowest.index]?.add(lowest.position);
  }
}

/** The choice of buying nothing at all, which every supplier accepts. */
export function buyNothing(survey: Survey): Choice {
  const parts = survey.lines.map(({ line, counts }) => {
    const nothing = counts.find(({ count }) => count.bagsInAll === 0);
    assert(nothing, 'buying nothing is one of the bag counts of every line');
    const units = line.pledges.map(() => 0);
    const lineCase = { line, ...nothing };
    return { ...lineCase, allotted: { units, key: keyOf(lineCase, units) } };
  });
  const keys = parts.map((part) => part.allotted.key);
  return { parts, key: choiceKey({ keys, counts: parts.map((part) => part.count) }, null) };
}
