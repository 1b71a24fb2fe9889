import type { Solver } from '@sheafbook/solve';
import { assert, sumOf } from '@sheafbook/units';
import { boundKey } from './fill-bound.ts';
import { keyOf, type LineCase, splitPledges, spreadUnits } from './fill-case.ts';
import { amounts, buildFillModel, type FillModel, hold, minimiseAmount } from './fill-model.ts';

/** Line units for each pledge of the line, and the key (levels 1 to 5) that they reach. */
export type Allotted = { readonly key: readonly number[]; readonly units: readonly number[] };

/**
 * Levels 1 to 5 of one line at one bag count. First it holds drops and unfilled units at what they must be at
 * least: if that fits, levels 1 to 3 are proven by that bound and one solve settles level 4. Otherwise one
 * solve a level. Level 2 needs none of its own: a bag is unfilled exactly when a unit is.
 */
export function allotLine(lineCase: LineCase, solver: Solver): Allotted | undefined {
  const bound = boundKey(lineCase);
  if (!bound) return undefined;
  const { taking } = splitPledges(lineCase);
  const withKey = (takingUnits: readonly number[]): Allotted => {
    const units = spreadUnits(lineCase, takingUnits);
    return { key: keyOf(lineCase, units), units };
  };
  if (lineCase.count.bagsInAll === 0) return withKey(taking.map(() => 0));

  const model = buildFillModel(taking, lineCase.count);
  const bounded = holdKey(lineCase, model, bound.slice(0, 3));
  const close =
    minimiseAmount(bounded, amounts.deviation(model), solver) ?? levelByLevel(lineCase, model, solver);
  if (!close) return undefined;
  const allotted = withKey(close);
  if (allotted.key[4] === leastLargest(lineCase, allotted.key)) return allotted;
  const held = holdKey(lineCase, model, allotted.key.slice(0, 4));
  return withKey(minimiseReached(held, amounts.largest(model), solver));
}

function levelByLevel(lineCase: LineCase, model: FillModel, solver: Solver): number[] | undefined {
  const served = minimiseAmount(model, amounts.minusServed(model), solver);
  if (!served) return undefined;
  const [drops] = keyOf(lineCase, spreadUnits(lineCase, served));
  const heldDrops = holdKey(lineCase, model, [drops ?? 0]);
  const filled = minimiseReached(heldDrops, amounts.spare(model), solver);
  const key = keyOf(lineCase, spreadUnits(lineCase, filled));
  const heldSpare = holdKey(lineCase, model, key.slice(0, 3));
  return minimiseReached(heldSpare, amounts.deviation(model), solver);
}

/** What an earlier solve reached cannot be out of reach of a later one. */
function minimiseReached(...[model, terms, solver]: Parameters<typeof minimiseAmount>): number[] {
  const units = minimiseAmount(model, terms, solver);
  assert(units, 'a level that was reached stays reachable');
  return units;
}

/** Holds a model at the levels of a key that have been reached. */
function holdKey(lineCase: LineCase, model: FillModel, key: readonly number[]): FillModel {
  const { taking, left } = splitPledges(lineCase);
  const [drops, , spare, deviation, largest] = key;
  const leftDeviation = sumOf(left.map((pledge) => pledge.wanted));
  const served = taking.length - ((drops ?? 0) - left.length);
  let held = hold(model, amounts.minusServed(model), -served);
  if (spare !== undefined) held = hold(held, amounts.spare(model), spare);
  if (deviation !== undefined) held = hold(held, amounts.deviation(model), deviation - leftDeviation);
  if (largest !== undefined) held = hold(held, amounts.largest(model), largest);
  return held;
}

/** A total deviation spread as evenly as can be is the least that the largest one can come to. */
function leastLargest(lineCase: LineCase, key: readonly number[]): number {
  const { taking, left } = splitPledges(lineCase);
  const leftWants = left.map((pledge) => pledge.wanted);
  const takingDeviation = (key[3] ?? 0) - sumOf(leftWants);
  return Math.max(0, ...leftWants, Math.ceil(takingDeviation / (taking.length || 1)));
}

/**
 * Levels 6 and 7: of all allotments with this key the one whose deviations, in pledge order, are smallest,
 * then the one that gives the earlier pledge more. An amount that already stands at its bound needs no solve.
 */
export function breakTies(lineCase: LineCase, allotted: Allotted, solver: Solver): readonly number[] {
  const { taking } = splitPledges(lineCase);
  if (lineCase.count.bagsInAll === 0) return allotted.units;
  let model = holdKey(lineCase, buildFillModel(taking, lineCase.count), allotted.key);
  let units = lineCase.allowed.map((position) => allotted.units[position] ?? 0);
  const settle = (
    terms: ReturnType<typeof amounts.deviationOf>,
    reached: () => number,
    floor: number,
  ): void => {
    if (reached() > floor) units = minimiseReached(model, terms, solver);
    model = hold(model, terms, reached());
  };
  const deviationAt = (position: number): number =>
    Math.abs((units[position] ?? 0) - (taking[position]?.wanted ?? 0));
  for (const position of taking.keys()) {
    settle(amounts.deviationOf(position), () => deviationAt(position), 0);
  }
  for (const [position, { wanted, most, step }] of taking.entries()) {
    const largestUnits = Math.min(most, wanted + deviationAt(position));
    settle(amounts.minusStepsOf(position), () => -(units[position] ?? 0) / step, -largestUnits / step);
  }
  return spreadUnits(lineCase, units);
}
