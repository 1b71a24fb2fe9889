import { AssertionError } from '@sheafbook/units';
import fc from 'fast-check';
import type { Highs } from 'highs';
import loadHighs from 'highs';
import { describe, expect, test } from 'vitest';
import { type IntegerModel, loadSolver } from './index.ts';

const solver = await loadSolver();

const aModel = (given: Partial<IntegerModel> = {}): IntegerModel => ({
  variables: [
    { least: 0, most: 10 },
    { least: 0, most: 10 },
  ],
  rows: [],
  costs: [2, 3],
  ...given,
});

const aRow = (coefficients: readonly number[], least: number | null, most: number | null) => ({
  terms: coefficients.map((coefficient, variable) => ({ variable, coefficient })),
  least,
  most,
});

// The workshop of the highs-js README (version 1.15): chairs earn 30, tables 50; carpentry c + 2t ≤ 40,
// finishing 2c + t ≤ 50; the published answer is 20 chairs and 10 tables for 1100.
test('finds the published plan of a workshop', () => {
  const variables = [
    { least: 0, most: 1000 },
    { least: 0, most: 1000 },
  ];
  const rows = [aRow([1, 2], null, 40), aRow([2, 1], null, 50)];
  const answer = solver.minimise({ variables, rows, costs: [-30, -50] });
  expect(answer).toEqual({ status: 'optimal', values: [20, 10], objective: -1100, bound: -1100 });
});

describe('plain models', () => {
  // 3x + 5y ≥ 17 at 2x + 3y: (4, 1) costs 11, (1, 3) costs 11, and nothing costs 10.
  test('a cover at least cost comes with a bound that proves it', () => {
    const answer = solver.minimise(aModel({ rows: [aRow([3, 5], 17, null)] }));
    expect(answer).toMatchObject({ status: 'optimal', objective: 11, bound: 11 });
  });
  test('an odd sum of even numbers is infeasible', () => {
    expect(solver.minimise(aModel({ rows: [aRow([2, 4], 17, 17)] }))).toEqual({ status: 'infeasible' });
  });
  test('crossed bounds are infeasible', () => {
    expect(solver.minimise(aModel({ variables: [{ least: 3, most: 2 }], costs: [1] })).status).toBe(
      'infeasible',
    );
    expect(solver.minimise(aModel({ rows: [aRow([1, 1], 5, 4)] })).status).toBe('infeasible');
  });
  test('no variables at all cost nothing, unless a row wants something', () => {
    const nothing = { variables: [], costs: [] };
    expect(solver.minimise({ ...nothing, rows: [] })).toEqual({
      status: 'optimal',
      values: [],
      objective: 0,
      bound: 0,
    });
    expect(solver.minimise({ ...nothing, rows: [aRow([], 1, null)] })).toEqual({ status: 'infeasible' });
  });
  test('a variable named twice in a row counts twice', () => {
    const terms = [
      { variable: 0, coefficient: 1 },
      { variable: 0, coefficient: 1 },
    ];
    const answer = solver.minimise(aModel({ rows: [{ terms, least: 6, most: null }], costs: [1, 0] }));
    expect(answer).toMatchObject({ objective: 3 });
  });
  test('the same model gets the same answer from another solver', async () => {
    const model = aModel({ rows: [aRow([3, 5], 17, null)] });
    expect((await loadSolver()).minimise(model)).toEqual(solver.minimise(model));
  });
});

const someModel = fc.integer({ min: 1, max: 4 }).chain((size) => {
  const coefficients = fc.array(fc.integer({ min: -6, max: 6 }), { minLength: size, maxLength: size });
  const bound = fc.option(fc.integer({ min: -20, max: 20 }));
  return fc.record({
    variables: fc.array(
      fc.record({ least: fc.integer({ min: -3, max: 0 }), most: fc.integer({ min: 0, max: 3 }) }),
      { minLength: size, maxLength: size },
    ),
    rows: fc.array(
      fc.tuple(coefficients, bound, bound).map(([row, least, most]) => aRow(row, least, most)),
      { maxLength: 4 },
    ),
    costs: coefficients,
  });
});

function leastByTryingAll({ variables, rows, costs }: IntegerModel): number | undefined {
  const all = variables.reduce<number[][]>(
    (points, { least, most }) =>
      points.flatMap((point) =>
        Array.from({ length: most - least + 1 }, (_, step) => [...point, least + step]),
      ),
    [[]],
  );
  const dot = (row: readonly number[], point: readonly number[]) =>
    row.reduce((sum, coefficient, i) => sum + coefficient * (point[i] ?? 0), 0);
  const fits = all.filter((point) =>
    rows.every((row) => {
      const sum = dot(
        row.terms.map((term) => term.coefficient),
        point,
      );
      return (row.least ?? sum) <= sum && sum <= (row.most ?? sum);
    }),
  );
  const objectives = fits.map((point) => dot(costs, point));
  return objectives.length === 0 ? undefined : Math.min(...objectives) + 0;
}

test('random models come out as trying everything does', { timeout: 30_000 }, () => {
  const property = fc.property(someModel, (model) => {
    const least = leastByTryingAll(model);
    const expected = least === undefined ? { status: 'infeasible' } : { objective: least, bound: least };
    expect(solver.minimise(model)).toMatchObject(expected);
  });
  fc.assert(property, { seed: 20_260_731, numRuns: 200 });
});

test.for([
  { wrong: 'a fraction', model: aModel({ costs: [1.5, 0] }), message: /a cost must be whole/ },
  { wrong: 'a missing cost', model: aModel({ costs: [1] }), message: /one cost per variable/ },
  {
    wrong: 'an unknown variable',
    model: aModel({ rows: [aRow([1, 1, 1], 0, null)] }),
    message: /not in the model/,
  },
  { wrong: 'an enormous number', model: aModel({ costs: [2 ** 41, 0] }), message: /within 2\^40/ },
  {
    wrong: 'an open bound',
    model: aModel({ variables: [{ least: 0, most: Number.POSITIVE_INFINITY }], costs: [1] }),
    message: /a bound must be whole/,
  },
])('$wrong is refused', ({ model, message }) => {
  expect(() => solver.minimise(model)).toThrow(message);
});

describe('an engine that breaks', () => {
  const breakOnce = (highs: Highs, howOften: { left: number }): Highs =>
    Object.assign(Object.create(highs), {
      withModel: (...call: Parameters<Highs['withModel']>) => {
        howOften.left -= 1;
        if (howOften.left >= 0) throw new WebAssembly.RuntimeError('unreachable');
        return highs.withModel(...call);
      },
    });
  const loadBreaking = (times: number) => {
    const howOften = { left: times };
    return loadSolver(async () => breakOnce(await loadHighs(), howOften));
  };
  const model = aModel({ rows: [aRow([3, 5], 17, null)] });

  test('is replaced, and the model is solved again', async () => {
    expect((await loadBreaking(1)).minimise(model)).toMatchObject({ objective: 11 });
  });
  test('is loaded anew even when loading fails once in between', { timeout: 30_000 }, async () => {
    const howOften = { left: 2 };
    let loads = 0;
    const breaking = await loadSolver(async () => {
      loads += 1;
      if (loads === 3) throw new WebAssembly.RuntimeError('no memory');
      return breakOnce(await loadHighs(), howOften);
    });
    expect(() => breaking.minimise(model)).toThrow('the solver broke twice on the same model');
    const solveAgain = () => breaking.minimise(model);
    await expect.poll(solveAgain, { timeout: 20_000 }).toMatchObject({ objective: 11 });
  });
  test('is not tried forever, and later calls work again', { timeout: 30_000 }, async () => {
    const breaking = await loadBreaking(2);
    expect(() => breaking.minimise(model)).toThrow(AssertionError);
    const solveAgain = () => breaking.minimise(model);
    await expect.poll(solveAgain, { timeout: 20_000 }).toMatchObject({ objective: 11 });
  });
});
