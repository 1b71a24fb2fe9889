import type { IntegerRow, IntegerVariable, Solver } from '@sheafbook/solve';
import { assert } from '@sheafbook/units';
import type { BagCount } from './fill-bag-counts.ts';
import { leastServed } from './fill-case.ts';
import type { FillPledge } from './fill-request.ts';

type Terms = IntegerRow['terms'];

/**
 * The integer program of one line at one bag count. For each pledge that takes part three unknowns: served
 * (0 or 1), steps (its allotment in steps), deviation; and two for the line: spare (unfilled units) and
 * largest (the largest deviation).
 */
export type FillModel = {
  readonly pledges: readonly FillPledge[];
  readonly variables: readonly IntegerVariable[];
  readonly rows: readonly IntegerRow[];
};

export function buildFillModel(pledges: readonly FillPledge[], count: BagCount): FillModel {
  const mostDeviation = Math.max(0, ...pledges.map(mostDeviationOf));
  const variables = [
    ...pledges.flatMap((pledge) => [
      { least: 0, most: 1 },
      { least: 0, most: pledge.most / pledge.step },
      { least: 0, most: mostDeviationOf(pledge) },
    ]),
    { least: 0, most: count.mostSpare },
    { least: 0, most: mostDeviation },
  ];
  const allotted = pledges.map((pledge, position) => term(stepsOf(position), pledge.step));
  const filled = [...allotted, term(spareOf(pledges), 1)];
  const allBags = { terms: filled, least: count.units, most: count.units };
  return {
    pledges,
    variables,
    rows: [allBags, ...pledges.flatMap((_, position) => pledgeRows(pledges, position))],
  };
}

function pledgeRows(pledges: readonly FillPledge[], position: number): IntegerRow[] {
  const pledge = pledges[position];
  assert(pledge, 'a row belongs to a pledge');
  const allotted = term(stepsOf(position), pledge.step);
  const deviation = term(deviationOf(position), 1);
  return [
    atLeast([allotted, term(servedOf(position), -leastServed(pledge))], 0),
    atLeast([term(servedOf(position), pledge.most), term(stepsOf(position), -pledge.step)], 0),
    atLeast([deviation, term(stepsOf(position), -pledge.step)], -pledge.wanted),
    atLeast([deviation, allotted], pledge.wanted),
    atLeast([term(largestOf(pledges), 1), term(deviationOf(position), -1)], 0),
  ];
}

/** What the levels count, as sums of a model's unknowns. */
export const amounts = {
  minusServed: ({ pledges }: FillModel): Terms => pledges.map((_, position) => term(servedOf(position), -1)),
  spare: ({ pledges }: FillModel): Terms => [term(spareOf(pledges), 1)],
  deviation: ({ pledges }: FillModel): Terms => pledges.map((_, position) => term(deviationOf(position), 1)),
  largest: ({ pledges }: FillModel): Terms => [term(largestOf(pledges), 1)],
  deviationOf: (position: number): Terms => [term(deviationOf(position), 1)],
  minusStepsOf: (position: number): Terms => [term(stepsOf(position), -1)],
};

/** The same model with an amount held at or below a value: how one level binds the next. */
export function hold(model: FillModel, terms: Terms, most: number): FillModel {
  return { ...model, rows: [...model.rows, { terms, least: null, most }] };
}

/** Makes an amount as small as it gets; the allotments in line units, or undefined when nothing fits. */
export function minimiseAmount(model: FillModel, terms: Terms, solver: Solver): number[] | undefined {
  const costs = model.variables.map(() => 0);
  for (const { variable, coefficient } of terms) costs[variable] = coefficient;
  const answer = solver.minimise({ variables: model.variables, rows: model.rows, costs });
  if (answer.status === 'infeasible') return undefined;
  return model.pledges.map(
    (pledge, position) => (answer.values[stepsOf(position)] ?? Number.NaN) * pledge.step,
  );
}

const servedOf = (position: number): number => 3 * position;
const stepsOf = (position: number): number => 3 * position + 1;
const deviationOf = (position: number): number => 3 * position + 2;
const spareOf = (pledges: readonly FillPledge[]): number => 3 * pledges.length;
const largestOf = (pledges: readonly FillPledge[]): number => 3 * pledges.length + 1;
const mostDeviationOf = ({ wanted, most }: FillPledge): number => Math.max(wanted, most - wanted);
const term = (variable: number, coefficient: number) => ({ variable, coefficient });
const atLeast = (terms: Terms, least: number): IntegerRow => ({ terms, least, most: null });
