import { expect, test } from 'vitest';
import { keptTime } from './kept-time.ts';

const words = { day: ['day', 'days'], month: ['month', 'months'], year: ['year', 'years'] } as const;

// A life of n years is n × 365.25 days, of which the whole ones are left: 730 of two years, 10,957 of thirty.
test.for([
  [1, '1 day'],
  [60, '60 days'],
  [61, '2 months'],
  [91, '2 months'],
  [729, '23 months'],
  [730, '2 years'],
  [1_094, '2 years'],
  [1_095, '3 years'],
  [10_957, '30 years'],
] as const)('%i days are %s', ([days, said]) => {
  expect(keptTime(days, words)).toBe(said);
});
