import { expect, test } from 'vitest';
import { dietGapOf } from './ends.ts';

const eater = (name: string, wholeDays: number | null) => ({ id: name, name, wholeDays });

test('the shortest fed is named, and how far the others could go', () => {
  // Rates 400, 500 and 250 g a day; 300 kg of wheat that Cy may not eat, 50 kg of rice and 10 kg of oats for 30 days:
  // Cy ends after 30 days of oats and 50,000 / 250 = 200 of rice; (300,000 + 2,500) / 900 = 336.1 for the others.
  const endsByEater = [eater('Ana', 336), eater('Ben', 336), eater('Cy', 230)];
  expect(dietGapOf({ endsByEater })).toEqual({ who: ['Cy'], days: 230, othersDays: 336 });
});

test('nobody is singled out where all are fed equally long', () => {
  expect(dietGapOf({ endsByEater: [eater('Ana', 40), eater('Ben', 40)] })).toBeNull();
  expect(dietGapOf({ endsByEater: [eater('Ana', null)] })).toBeNull();
  expect(dietGapOf({ endsByEater: [] })).toBeNull();
});

test('others may be fed without an end', () => {
  const endsByEater = [eater('Ana', null), eater('Ben', 0)];
  expect(dietGapOf({ endsByEater })).toEqual({ who: ['Ben'], days: 0, othersDays: null });
});
