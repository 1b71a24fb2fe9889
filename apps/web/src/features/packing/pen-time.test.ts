import { expect, test } from 'vitest';
import { dayThere, penTime } from './pen-time.ts';

test('a pen’s hour is of the day that it is on the wall of the storehouse', () => {
  const atMs = Date.parse('2026-12-06T03:30:00Z');
  expect(dayThere(atMs, 'America/Chicago')).toBe('2026-12-05');
  const { penAt, isAhead } = penTime('21:15', 'America/Chicago', '2020-12-05');
  expect(penAt?.toISOString()).toBe('2020-12-06T03:15:00.000Z');
  expect(isAhead).toBe(false);
});

test('what is not written yet is no time, and one that is to come is ahead', () => {
  expect(penTime('', 'America/Chicago')).toEqual({ penAt: null, isAhead: false });
  expect(
    penTime('12:00', 'America/Chicago', dayThere(Date.now() + 2 * 86_400_000, 'America/Chicago')).isAhead,
  ).toBe(true);
});
