import { expect, test } from 'vitest';
import { isWithin } from './interval.ts';

test('a time lies within another that begins no later and ends no earlier', () => {
  expect(isWithin({ startMs: 2, endMs: 4 }, { startMs: 2, endMs: 4 })).toBe(true);
  expect(isWithin({ startMs: 2, endMs: 4 }, { startMs: 0, endMs: 9 })).toBe(true);
  expect(isWithin({ startMs: 2, endMs: 4 }, { startMs: 3, endMs: 9 })).toBe(false);
  expect(isWithin({ startMs: 2, endMs: 4 }, { startMs: 0, endMs: 3 })).toBe(false);
});
