import { expect, test } from 'vitest';
import { ageOn } from './age.ts';

test.for([
  {
    birthOn: '2018-06-15',
    today: '2026-06-15',
    years: 8,
    months: 96,
    because: 'a year is complete on the birthday',
  },
  { birthOn: '2018-06-16', today: '2026-06-15', years: 7, months: 95, because: 'not on the day before' },
  {
    birthOn: '2018-06',
    today: '2026-06-01',
    years: 8,
    months: 96,
    because: 'a month counts as its first day',
  },
  { birthOn: '2018', today: '2026-01-01', years: 8, months: 96, because: 'a year counts as its first day' },
  {
    birthOn: '2024-02-29',
    today: '2025-02-28',
    years: 0,
    months: 11,
    because: 'a leap day is not yet there',
  },
  { birthOn: '2024-02-29', today: '2025-03-01', years: 1, months: 12, because: 'it is complete on 1 March' },
])('$birthOn on $today: $because', ({ birthOn, today, years, months }) => {
  expect(ageOn(birthOn, today)).toEqual({ isBorn: true, years, months });
});

test('someone born later is not born yet', () => {
  expect(ageOn('2026-06-16', '2026-06-15').isBorn).toBe(false);
});

test.for(['2026-02-30', '2026-13', '26-01-01', 'today', ''])('%s is not a day', (birthOn) => {
  expect(() => ageOn(birthOn, '2026-06-15')).toThrow();
});
