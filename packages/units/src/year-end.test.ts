import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from './day.ts';
import { yearEndBy } from './year-end.ts';

test.for([
  ['2026-12-31', 12, '2026-12-31'],
  ['2026-12-30', 12, '2025-12-31'],
  ['2027-01-01', 12, '2026-12-31'],
  ['2026-09-01', 8, '2026-08-31'],
  ['2026-08-30', 8, '2025-08-31'],
  ['2028-03-01', 2, '2028-02-29'],
  ['2028-02-28', 2, '2027-02-28'],
  ['2028-02-29', 2, '2028-02-29'],
] as const)('by %s, the newest year that ends with month %s ended on %s', ([day, month, end]) => {
  expect(yearEndBy(day, month)).toBe(end);
});

test('a year’s end lies at most a year back, is a month’s last day, and stays till the next', () => {
  const days = fc.integer({ min: 0, max: 40_000 }).map((days) => addDays('1980-01-01', days));
  fc.assert(
    fc.property(days, fc.integer({ min: 1, max: 12 }), (day, month) => {
      const end = yearEndBy(day, month);
      expect(end <= day && end >= addDays(day, -366)).toBe(true);
      expect([Number(end.slice(5, 7)), addDays(end, 1).slice(8)]).toEqual([month, '01']);
      expect(yearEndBy(end, month)).toBe(end);
    }),
  );
});

test('a month that is none is refused', () => {
  for (const month of [0, 13, 1.5]) expect(() => yearEndBy('2026-01-01', month)).toThrow('no month');
});
