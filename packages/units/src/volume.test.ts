import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { fraction, multiplyFractions } from './fraction.ts';
import { MILLILITRES_PER_UNIT, microlitresOf, type VolumeUnit } from './volume.ts';

test.for([
  { count: 4, unit: 'us-quart', whole: 'us-gallon' },
  { count: 16, unit: 'us-cup', whole: 'us-gallon' },
  { count: 128, unit: 'us-fluid-ounce', whole: 'us-gallon' },
  { count: 231, unit: 'cubic-inch', whole: 'us-gallon' },
  { count: 1000, unit: 'millilitre', whole: 'litre' },
] as const)('$count $unit make one $whole exactly', ({ count, unit, whole }) => {
  expect(multiplyFractions(fraction(count), MILLILITRES_PER_UNIT[unit])).toEqual(MILLILITRES_PER_UNIT[whole]);
});

test.for([
  { count: 1, unit: 'us-gallon', microlitres: 3_785_412 },
  { count: 5, unit: 'us-gallon', microlitres: 18_927_059 },
  { count: 2, unit: 'litre', microlitres: 2_000_000 },
  { count: 0, unit: 'us-cup', microlitres: 0 },
] as const satisfies readonly { count: number; unit: VolumeUnit; microlitres: number }[])(
  '$count $unit is $microlitres microlitres',
  ({ count, unit, microlitres }) => {
    expect(microlitresOf(count, unit)).toBe(microlitres);
  },
);

test('a volume below nothing is refused', () => {
  expect(() => microlitresOf(-1, 'us-cup')).toThrow(AssertionError);
});
