import { assert } from '@sheafbook/units';
import type { IntegerModel, IntegerRow } from './model.ts';

/**
 * Re-checks a rounded answer in exact integers and returns what it costs.
 * The solver computes in doubles with tolerances; nothing it says is believed before this check.
 */
export function checkAnswer(model: IntegerModel, values: readonly number[]): number {
  assert(values.length === model.variables.length, 'an answer needs one value per variable');
  for (const [position, { least, most }] of model.variables.entries()) {
    const value = values[position] ?? Number.NaN;
    assert(Number.isSafeInteger(value), `variable ${position} came out as ${value}, which is not whole`);
    assert(least <= value && value <= most, `variable ${position} came out as ${value}, outside its bounds`);
  }
  for (const [position, row] of model.rows.entries()) checkRow(row, values, position);
  const objective = Number(sumExactly(model.costs, values));
  assert(Number.isSafeInteger(objective), 'the cost of an answer must stay below 2^53');
  return objective;
}

function checkRow(row: IntegerRow, values: readonly number[], position: number): void {
  const sum = sumExactly(
    row.terms.map((term) => term.coefficient),
    row.terms.map((term) => values[term.variable] ?? Number.NaN),
  );
  assert(
    row.least === null || sum >= BigInt(row.least),
    `row ${position} came out at ${sum}, below ${row.least}`,
  );
  assert(
    row.most === null || sum <= BigInt(row.most),
    `row ${position} came out at ${sum}, above ${row.most}`,
  );
}

function sumExactly(coefficients: readonly number[], values: readonly number[]): bigint {
  return coefficients.reduce(
    (sum, coefficient, position) => sum + BigInt(coefficient) * BigInt(values[position] ?? Number.NaN),
    0n,
  );
}
