import { keptTime } from '../kept-time.ts';

export const days = (count: number): string =>
  keptTime(count, { day: ['day', 'days'], month: ['month', 'months'], year: ['year', 'years'] });

/** What a home page says of the one thing to eat first. */
export const en = {
  eatFirst: 'Eat first',
  ofKitchen: (food: string) => `${food}, in the kitchen`,
  atRisk: (mass: string) => `At your pace ${mass} would pass its day before you eat it.`,
  keeps: (left: number, past: number) => {
    if (left > 0) return `keeps about ${days(left)}`;
    return past > 0
      ? `past its day by about ${days(past)}: look and smell first`
      : 'its day is today: look and smell first';
  },
  unfit: 'not to be eaten: a look found it unfit',
  seeAll: 'What to eat next',
};
