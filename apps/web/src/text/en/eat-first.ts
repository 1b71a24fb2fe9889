import { keptTime } from '../kept-time.ts';

export const days = (count: number): string =>
  keptTime(count, { day: ['day', 'days'], month: ['month', 'months'], year: ['year', 'years'] });

/** What a home page says of the one thing to eat first. */
export const en = {
  eatFirst: 'Eat first',
  ofKitchen: (food: string) => `${food}, in the kitchen`,
  atRisk: (mass: string) => `At your pace ${mass} would pass its day before you eat it.`,
  keeps: (count: number) =>
    count === 0 ? 'past its day: look and smell first' : `keeps about ${days(count)}`,
  seeAll: 'What to eat next',
};
