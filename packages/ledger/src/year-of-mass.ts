import { assertWhole, sumOf } from '@sheafbook/units';
import type { OutsideKind } from './outside.ts';

/** Where grams of somebody’s came from or went: the outside, or another owner. Units: none. Errors: none. */
export type MassSide = OutsideKind | 'others';

/** What moved in a year between somebody’s stock and one side of it. Units: grams, both ways. Errors: none by itself. */
export type MassFlow = { readonly side: MassSide; readonly inGrams: number; readonly outGrams: number };

/**
 * A year of somebody’s food. Units: grams. `landedGrams` came from suppliers less what went back; `changedGrams` is what
 * milling and the like added, below zero where they took. Conservation: opening + landed + from others + changed =
 * eaten + given + lost + to others + closing. Errors: none by itself.
 */
export type YearOfMass = {
  readonly openingGrams: number;
  readonly landedGrams: number;
  readonly fromOthersGrams: number;
  readonly changedGrams: number;
  readonly eatenGrams: number;
  readonly givenGrams: number;
  readonly lostGrams: number;
  /** Each way of losing food, where some was lost by it. */
  readonly lost: readonly { readonly by: LostBy; readonly grams: number }[];
  readonly toOthersGrams: number;
  readonly closingGrams: number;
};

/** The ways in which food is lost to people. Units: none. Errors: none. */
export const LOST_BY = [
  'animals',
  'composted',
  'discarded',
  'spilled',
  'sampled',
  'moisture',
  'unexplained',
] as const;
/** One of `LOST_BY`. Units: none. Errors: none. */
export type LostBy = (typeof LOST_BY)[number];

/**
 * The year on one page: what was there, came, was eaten, given and lost, and what is left.
 * Units: whole grams. What was found beyond the book lowers what is lost by no explanation, what grew damper what is lost
 * by moisture, and either may stand below zero.
 * Errors: AssertionError when a figure is not whole and ≥ 0. Source: job map 16, delighter 20.
 */
export function yearOfMass(openingGrams: number, flows: readonly MassFlow[]): YearOfMass {
  assertWhole(openingGrams, 'openingGrams');
  for (const { inGrams, outGrams } of flows) {
    assertWhole(inGrams, 'inGrams');
    assertWhole(outGrams, 'outGrams');
  }
  const sum = (side: MassSide, way: 'inGrams' | 'outGrams') =>
    sumOf(flows.filter((flow) => flow.side === side).map((flow) => flow[way]));
  const out = (side: MassSide) => sum(side, 'outGrams') - sum(side, 'inGrams');
  const lost = LOST_BY.map((by) => ({ by, grams: out(by) })).filter(({ grams }) => grams !== 0);
  const allIn = sumOf(flows.map(({ inGrams }) => inGrams));
  const allOut = sumOf(flows.map(({ outGrams }) => outGrams));
  return {
    openingGrams,
    landedGrams: -out('supplier'),
    fromOthersGrams: sum('others', 'inGrams'),
    changedGrams: -out('transformed'),
    eatenGrams: out('eaten'),
    givenGrams: out('given'),
    lostGrams: sumOf(lost.map(({ grams }) => grams)),
    lost,
    toOthersGrams: sum('others', 'outGrams'),
    closingGrams: openingGrams + allIn - allOut,
  };
}
