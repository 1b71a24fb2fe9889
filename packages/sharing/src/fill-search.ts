import { sumOf } from '@sheafbook/units';
import type { BagCount } from './fill-bag-counts.ts';
import type { Candidate, LineCandidates } from './fill-candidates.ts';
import { deviationsOf, type LineCase } from './fill-case.ts';
import type { Allotted } from './fill-levels.ts';
import { addKeys, compareKeys, Heap } from './fill-order.ts';

/** Bags and allotments for some lines together, and the summed key that they reach. */
export type Choice = { readonly parts: readonly ChoicePart[]; readonly key: readonly number[] };
export type ChoicePart = LineCase & { readonly allotted: Allotted };

/**
 * What a search looks for. `judge` turns the lines' own best candidates into a choice (or none, when the
 * order may not be placed); a choice that could not beat `best` may be left out. `boundOf` bounds the key of
 * every choice with these candidates from below.
 */
export type SearchRules = {
  readonly lines: readonly LineCandidates[];
  readonly judge: (candidates: readonly Candidate[], best: Choice | undefined) => Choice | undefined;
  readonly boundOf: (orderKey: readonly number[]) => readonly number[];
};

/** `bound` is the smallest key that a choice not looked at could still have; undefined when none is left. */
export type SearchResult = {
  readonly best: Choice | undefined;
  readonly tried: number;
  readonly bound: readonly number[] | undefined;
};

type Ranks = {
  readonly ranks: readonly number[];
  readonly raised: number;
  readonly orderKey: readonly number[];
};

/** The most joint bag counts that are looked at before the search gives up its proof. */
const MOST_TRIED = 100_000;

/**
 * Looks at joint bag counts from the smallest possible key upwards, and stops when no other can be better:
 * the same answer as looking at all of them.
 */
export function searchCounts({ lines, judge, boundOf }: SearchRules): SearchResult {
  const queue = new Heap<Ranks>(
    (a, b) => compareKeys(a.orderKey, b.orderKey) || compareKeys(a.ranks, b.ranks),
  );
  const start = rankOf(lines, { ranks: lines.map(() => 0), raised: 0 });
  if (start) queue.push(start);
  let best: Choice | undefined;
  for (let tried = 0; ; tried += 1) {
    const next = queue.first;
    if (!next) return { best, tried, bound: undefined };
    const bound = boundOf(next.orderKey);
    if (best && compareKeys(bound, best.key) > 0) return { best, tried, bound: undefined };
    if (tried === MOST_TRIED) return { best, tried, bound };
    queue.pop();
    for (const child of raiseOne(lines, next)) queue.push(child);
    const choice = judge(candidatesAt(lines, next.ranks), best);
    if (choice && (!best || isBetter(lines, choice, best))) best = choice;
  }
}

/** Each combination of ranks is reached once: from the one whose last raised rank is one lower. */
function raiseOne(lines: readonly LineCandidates[], { ranks, raised }: Ranks): Ranks[] {
  return lines.flatMap((_, position) => {
    if (position < raised) return [];
    const raisedRanks = ranks.map((rank, index) => (index === position ? rank + 1 : rank));
    return rankOf(lines, { ranks: raisedRanks, raised: position }) ?? [];
  });
}

function rankOf(lines: readonly LineCandidates[], at: Omit<Ranks, 'orderKey'>): Ranks | undefined {
  const candidates = candidatesAt(lines, at.ranks);
  if (candidates.length < lines.length) return undefined;
  return { ...at, orderKey: addKeys(candidates.map((candidate) => candidate.orderKey)) };
}

function candidatesAt(lines: readonly LineCandidates[], ranks: readonly number[]): Candidate[] {
  return lines.flatMap((line, position) => line.at(ranks[position] ?? 0) ?? []);
}

function isBetter(lines: readonly LineCandidates[], a: Choice, b: Choice): boolean {
  const byKey = compareKeys(a.key, b.key);
  return byKey < 0 || (byKey === 0 && compareKeys(tieKeyOf(lines, a), tieKeyOf(lines, b)) < 0);
}

/** What decides between equal keys: deviations in pledge order, then larger allotments, then larger bags. */
function tieKeyOf(lines: readonly LineCandidates[], choice: Choice): number[] {
  const settled = settleChoice(lines, choice).parts;
  return [
    ...settled.flatMap((part) => deviationsOf(part.line, part.allotted.units)),
    ...settled.flatMap((part) => part.allotted.units.map((units) => -units)),
    ...settled.flatMap((part) => part.count.bags.map((bags) => -bags)),
  ];
}

/** The same choice with each line's allotments settled by the tie-breaks. */
export function settleChoice(lines: readonly LineCandidates[], choice: Choice): Choice {
  const parts = choice.parts.map((part, position) => {
    return { ...part, allotted: lines[position]?.settle(part) ?? part.allotted };
  });
  return { ...choice, parts };
}

/** The key of several lines together: the five levels summed, then cost and bags where they count. */
export function choiceKey(
  { keys, counts }: { keys: readonly (readonly number[])[]; counts: readonly BagCount[] },
  cost: number | null,
): number[] {
  const levels = addKeys(keys);
  return cost === null ? levels : [...levels, cost, sumOf(counts.map((count) => count.bagsInAll))];
}
