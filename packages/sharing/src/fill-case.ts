import { assert, sumOf } from '@sheafbook/units';
import type { BagCount } from './fill-bag-counts.ts';
import type { FillLine, FillPledge } from './fill-request.ts';

/**
 * One line at one bag count; `allowed` are the positions of the pledges whose ceiling lets them take part.
 */
export type LineCase = {
  readonly line: FillLine;
  readonly count: BagCount;
  readonly allowed: readonly number[];
};

/** The names of the first five levels of a key, in the order in which they are made small. */
export const LEVELS = [
  'dropped pledges',
  'unfilled bags',
  'unfilled units',
  'total deviation',
  'largest deviation',
] as const;

/** A served pledge gets at least one step, also when its least is 0. */
export const leastServed = (pledge: FillPledge): number => Math.max(pledge.least, pledge.step);

export function splitPledges({ line, allowed }: LineCase): { taking: FillPledge[]; left: FillPledge[] } {
  const isAllowed = new Set(allowed);
  return {
    taking: line.pledges.filter((_, position) => isAllowed.has(position)),
    left: line.pledges.filter((_, position) => !isAllowed.has(position)),
  };
}

/** Puts what the pledges that take part get back among all pledges of the line, the others at 0. */
export function spreadUnits({ line, allowed }: LineCase, takingUnits: readonly number[]): number[] {
  const units = line.pledges.map(() => 0);
  for (const [index, position] of allowed.entries()) units[position] = takingUnits[index] ?? 0;
  return units;
}

/** How far each pledge is from what it wanted; a dropped pledge by its whole want. */
export function deviationsOf(line: FillLine, units: readonly number[]): number[] {
  return line.pledges.map((pledge, position) => Math.abs((units[position] ?? 0) - pledge.wanted));
}

/** The key of an allotment over levels 1 to 5, counted from the allotment itself. */
export function keyOf({ line, count }: LineCase, units: readonly number[]): number[] {
  assert(units.length === line.pledges.length, 'a key needs the units of every pledge');
  const spare = count.units - sumOf(units);
  const deviations = deviationsOf(line, units);
  const drops = units.filter((amount) => amount === 0).length;
  return [drops, spare > 0 ? 1 : 0, spare, sumOf(deviations), Math.max(0, ...deviations)];
}
