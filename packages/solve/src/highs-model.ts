import { assert } from '@sheafbook/units';
import type { Highs, ModelData } from 'highs';
import type { IntegerModel } from './model.ts';

/** Beyond this a double's tolerance of 10⁻⁶ relative to 1 is no longer to be trusted for whole numbers. */
export const LARGEST = 2 ** 40;

export function checkModel({ variables, rows, costs }: IntegerModel): void {
  assert(costs.length === variables.length, 'a model needs one cost per variable');
  for (const { least, most } of variables) {
    checkNumber(least, 'a bound');
    checkNumber(most, 'a bound');
  }
  for (const cost of costs) checkNumber(cost, 'a cost');
  for (const row of rows) {
    if (row.least !== null) checkNumber(row.least, 'a row bound');
    if (row.most !== null) checkNumber(row.most, 'a row bound');
    for (const { variable, coefficient } of row.terms) {
      checkNumber(coefficient, 'a coefficient');
      assert(
        variables[variable] !== undefined,
        `a row names variable ${variable}, which is not in the model`,
      );
    }
  }
}

function checkNumber(value: number, name: string): void {
  assert(Number.isInteger(value), `${name} must be whole, got ${value}`);
  assert(Math.abs(value) <= LARGEST, `${name} must stay within 2^40, got ${value}`);
}

/** Lays a model out as compressed rows, the shape HiGHS takes. */
export function toHighs(highs: Highs, { variables, rows, costs }: IntegerModel): ModelData {
  const sparseRows = rows.map((row) => mergeTerms(row.terms));
  const starts = [0];
  for (const row of sparseRows) starts.push((starts.at(-1) ?? 0) + row.length);
  return {
    numCols: variables.length,
    numRows: rows.length,
    colCost: Float64Array.from(costs),
    colLower: Float64Array.from(variables, (variable) => variable.least),
    colUpper: Float64Array.from(variables, (variable) => variable.most),
    rowLower: Float64Array.from(rows, (row) => row.least ?? -highs.infinity),
    rowUpper: Float64Array.from(rows, (row) => row.most ?? highs.infinity),
    matrix: {
      format: 'csr',
      numRows: rows.length,
      numCols: variables.length,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(sparseRows.flat(), ([variable]) => variable),
      values: Float64Array.from(sparseRows.flat(), ([, coefficient]) => coefficient),
    },
    integrality: variables.map(() => highs.constants.variableType.integer),
  };
}

/** HiGHS refuses a variable named twice in one row, so such terms are added up. */
function mergeTerms(terms: IntegerModel['rows'][number]['terms']): [number, number][] {
  const sums = new Map<number, number>();
  for (const { variable, coefficient } of terms) {
    sums.set(variable, (sums.get(variable) ?? 0) + coefficient);
  }
  return [...sums].filter(([, coefficient]) => coefficient !== 0).toSorted(([a], [b]) => a - b);
}
