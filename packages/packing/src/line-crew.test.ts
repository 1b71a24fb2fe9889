import { expect, test } from 'vitest';
import { pouredPerHour } from './line-crew.ts';

const minutes = (...at: number[]) => at.map((one) => one * 60_000);

test('what was poured an hour counts the steps between the first and the last, whatever their order', () => {
  expect(pouredPerHour(minutes(0, 1, 2, 3, 4))).toBe(60);
  expect(pouredPerHour(minutes(30, 0, 20))).toBe(4);
});

test('nothing an hour is told of what was written down in one go', () => {
  expect(pouredPerHour([])).toBeNull();
  expect(pouredPerHour(minutes(5))).toBeNull();
  expect(pouredPerHour(minutes(5, 5, 5))).toBeNull();
});
