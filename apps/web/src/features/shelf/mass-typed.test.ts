import { expect, test } from 'vitest';
import { gramsOnScale } from './mass-typed.ts';

// A bag that holds 6,700 g stands beside the scale.
test.for([
  ['2560', 2560],
  ['2,560', 2560],
  ['95', 95],
  ['6.7', 6700],
  ['2.655', 2655],
  ['2655 g', 2655],
  ['5 lb', 2268],
  ['12 kg', 12_000], // said outright, so it is the book that refuses it
  ['', undefined],
  ['heavy', undefined],
] as const)('“%s” on the scale is %d g', ([typed, grams]) => {
  expect(gramsOnScale(typed, 6700)).toBe(grams);
});
