import { expect, test } from 'vitest';
import { isPriceNowAbove } from './price-guard.ts';

test.for([
  { repriced: 52_350, percent: 2, isAbove: false, because: 'nothing changed' },
  { repriced: 53_397, percent: 2, isAbove: false, because: 'exactly 2 % more is allowed' },
  { repriced: 53_398, percent: 2, isAbove: true, because: 'one cent beyond is not' },
  { repriced: 40_000, percent: 2, isAbove: false, because: 'cheaper is never above' },
  { repriced: 52_351, percent: 0, isAbove: true, because: 'no percent at all' },
])('523.50 re-priced at $repriced with $percent %: $because', ({ repriced, percent, isAbove }) => {
  expect(isPriceNowAbove(52_350, repriced, percent)).toBe(isAbove);
});
test('2 % is what a group gets that chose nothing', () => {
  expect(isPriceNowAbove(10_000, 10_200)).toBe(false);
  expect(isPriceNowAbove(10_000, 10_201)).toBe(true);
});
test('amounts that make no sense are stopped', () => {
  expect(() => isPriceNowAbove(-1, 1)).toThrow(/estimateMinorUnits/);
  expect(() => isPriceNowAbove(1, 1, 0.5)).toThrow(/percent/);
});
