import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { addDays, daysBetween, isDay, weekdayOf } from './day.ts';

describe('a day', () => {
  test.for(['2026-11-25', '2024-02-29', '2000-02-29', '0001-01-01', '9999-12-31'])('%s exists', (day) => {
    expect(isDay(day)).toBe(true);
  });

  test.for([
    '2026-02-29',
    '1900-02-29',
    '2026-02-30',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-1-5',
    '2026-11',
    '05/09/2026',
    '0000-01-01',
    '12026-01-01',
    '2026-11-25T00:00:00Z',
    '2026-11-25 ',
    '',
  ])('"%s" does not exist', (day) => {
    expect(isDay(day)).toBe(false);
  });
});

describe('counting days', () => {
  test.for([
    { day: '2026-02-28', days: 1, sum: '2026-03-01' },
    { day: '2024-02-28', days: 1, sum: '2024-02-29' },
    { day: '2026-01-01', days: -1, sum: '2025-12-31' },
    { day: '2026-11-25', days: 0, sum: '2026-11-25' },
    { day: '2000-01-01', days: 146_097, sum: '2400-01-01' }, // 400 Gregorian years are 146,097 days
  ])('$day and $days days is $sum', ({ day, days, sum }) => {
    expect(addDays(day, days)).toBe(sum);
  });

  test('from a to b is b − a', () => {
    expect(daysBetween('2026-11-25', '2026-12-25')).toBe(30);
    expect(daysBetween('2026-12-25', '2026-11-25')).toBe(-30);
  });

  test('there and back is the same day, and the distance is what was added', () => {
    const someDay = fc.integer({ min: 0, max: 3_000_000 }).map((days) => addDays('0001-01-01', days));
    fc.assert(
      fc.property(someDay, fc.integer({ min: -360, max: 500_000 }), (day, days) => {
        fc.pre(daysBetween('0001-01-01', day) + days >= 0);
        expect(daysBetween(day, addDays(day, days))).toBe(days);
        expect(addDays(addDays(day, days), -days)).toBe(day);
      }),
    );
  });

  test.for([
    { day: '2026-02-30', days: 1 },
    { day: '2026-02-28', days: 0.5 },
    { day: '9999-12-31', days: 1 },
    { day: '0001-01-01', days: -1 },
    { day: '2026-02-28', days: 1e12 },
  ])('$day and $days days is refused', ({ day, days }) => {
    expect(() => addDays(day, days)).toThrow(AssertionError);
  });
});

test.for([
  ['1970-01-01', 4],
  ['2000-02-29', 2],
  ['2026-11-29', 0],
] as const)('%s is weekday %i', ([day, weekday]) => {
  // 1970 began on a Thursday and 29 February 2000 was a Tuesday, as any calendar shows.
  expect(weekdayOf(day)).toBe(weekday);
});
