import { describe, expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { ageInYears, firstDayOf, isPartialDay } from './partial-day.ts';

describe('a date known no finer than its month or year', () => {
  test.for([
    { partial: '2026-11-25', firstDay: '2026-11-25' },
    { partial: '2026-11', firstDay: '2026-11-01' },
    { partial: '2026', firstDay: '2026-01-01' },
  ])('$partial counts as $firstDay', ({ partial, firstDay }) => {
    expect(firstDayOf(partial)).toBe(firstDay);
  });

  test.for(['', '26', '2026-13', '2026-1', '2026-02-30', '0000', '2026-', 'May 2026'])(
    '"%s" is none',
    (text) => {
      expect(isPartialDay(text)).toBe(false);
      expect(() => firstDayOf(text)).toThrow(AssertionError);
    },
  );
});

describe('age in completed years', () => {
  test.for([
    { birthOn: '2018-11-25', today: '2026-11-25', years: 8, because: 'the birthday completes the year' },
    { birthOn: '2018-11-26', today: '2026-11-25', years: 7, because: 'the day before does not' },
    { birthOn: '2026-11-25', today: '2026-11-25', years: 0, because: 'a newborn is 0' },
    { birthOn: '2018-11', today: '2026-11-01', years: 8, because: 'a month counts as its first day' },
    { birthOn: '2018-11', today: '2026-10-31', years: 7, because: 'the day before that month' },
    { birthOn: '2018', today: '2026-01-01', years: 8, because: 'a year counts as its first day' },
    { birthOn: '2020-02-29', today: '2026-02-28', years: 5, because: 'no 29 February this year yet' },
    { birthOn: '2020-02-29', today: '2026-03-01', years: 6, because: '1 March completes the year' },
    { birthOn: '2020-02-29', today: '2024-02-29', years: 4, because: 'a leap day on a leap year' },
  ])('born $birthOn is $years on $today: $because', ({ birthOn, today, years }) => {
    expect(ageInYears(birthOn, today)).toBe(years);
  });

  test.for([
    { birthOn: '2026-11-26', today: '2026-11-25' },
    { birthOn: '2026-02-30', today: '2026-11-25' },
    { birthOn: '2018', today: '2026' },
  ])('born $birthOn has no age on $today', ({ birthOn, today }) => {
    expect(() => ageInYears(birthOn, today)).toThrow(AssertionError);
  });
});
