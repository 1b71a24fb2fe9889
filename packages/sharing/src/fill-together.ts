import { boundKey } from './fill-bound.ts';
import type { Candidate, LineCandidates } from './fill-candidates.ts';
import type { LineCase } from './fill-case.ts';
import { allowedAt, landedPrice, meetsMinimum, type OrderTotals, totalOrder } from './fill-ceilings.ts';
import type { Allotted } from './fill-levels.ts';
import { compareKeys } from './fill-order.ts';
import type { FillRequest } from './fill-request.ts';
import { choiceKey, type SearchResult, type SearchRules, searchCounts } from './fill-search.ts';

/**
 * One line by itself: nothing but its own levels; with several bag sizes also what its goods cost, and bags.
 */
export function searchAlone(line: LineCandidates): SearchResult {
  const costCounts = line.line.offers.length > 1;
  return searchCounts({
    lines: [line],
    judge: (parts) => {
      const counts = parts.map((part) => part.count);
      const keys = parts.map((part) => part.allotted.key);
      return { parts, key: choiceKey({ keys, counts }, costCounts ? (counts[0]?.goods ?? 0) : null) };
    },
    boundOf: (orderKey) => (costCounts ? orderKey : orderKey.slice(0, 5)),
  });
}

/**
 * All lines of an order together, under the supplier's minimum and every ceiling at the joint landed prices.
 * With several lines the cost of the whole order counts after level 5; a single line keeps its own levels.
 * `leastFreight` is the least that any such order pays.
 */
export function searchTogether(
  request: FillRequest,
  { lines, leastFreight }: { lines: readonly LineCandidates[]; leastFreight: number },
): SearchResult {
  const costKind = lines.length > 1 ? 'order' : (lines[0]?.line.offers.length ?? 0) > 1 ? 'goods' : 'none';
  const costOf = ({ goods, freight }: OrderTotals): number | null =>
    ({ order: goods + freight, goods, none: null })[costKind];
  const boundOf = (orderKey: readonly number[]): readonly number[] => {
    const goods = orderKey[5] ?? 0;
    // Freight is left out at no goods, because an order of nothing pays none.
    return [
      ...orderKey.slice(0, 5),
      ...{ order: [goods + (goods && leastFreight)], goods: [goods], none: [] }[costKind],
    ];
  };
  return searchCounts({ lines, judge: judgeTogether(request, lines, costOf), boundOf });
}

function judgeTogether(
  request: FillRequest,
  lines: readonly LineCandidates[],
  costOf: (totals: OrderTotals) => number | null,
): SearchRules['judge'] {
  return (candidates, best) => {
    const counts = candidates.map((candidate) => candidate.count);
    const totals = totalOrder(request, counts);
    if (!meetsMinimum(request, totals)) return undefined;
    const cases = candidates.map((candidate) => underCeilings(candidate, totals));
    const bounds = cases.flatMap((lineCase) => {
      const bound = lineCase.allotted?.key ?? boundKey(lineCase);
      return bound ? [bound] : [];
    });
    if (bounds.length < cases.length) return undefined;
    const bound = choiceKey({ keys: bounds, counts }, costOf(totals));
    if (best && compareKeys(bound, best.key) > 0) return undefined;
    const parts = cases.flatMap((lineCase, position) => {
      const allotted = lineCase.allotted ?? lines[position]?.allot(lineCase);
      return allotted ? [{ ...lineCase, allotted }] : [];
    });
    if (parts.length < cases.length) return undefined;
    const keys = parts.map((part) => part.allotted.key);
    return { parts, key: choiceKey({ keys, counts }, costOf(totals)) };
  };
}

/** Keeps what is known of a candidate when every ceiling holds; else fewer may take part, not yet solved. */
function underCeilings(
  candidate: Candidate,
  totals: OrderTotals,
): LineCase & { readonly allotted?: Allotted } {
  const { line, count } = candidate;
  const hasCeilings = line.pledges.some((pledge) => pledge.ceiling !== null);
  if (count.bagsInAll === 0 || !hasCeilings) return candidate;
  const allowedNow = new Set(allowedAt(line, landedPrice(count, totals)));
  const allowed = candidate.allowed.filter((position) => allowedNow.has(position));
  return allowed.length === candidate.allowed.length ? candidate : { line, count, allowed };
}
