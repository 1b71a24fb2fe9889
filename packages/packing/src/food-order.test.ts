import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changeoverMinutes, type FoodRun, orderFoods } from './food-order.ts';

const ALLERGENS = ['milk', 'soy', 'wheat', 'gluten'];

const someRuns = fc
  .array(
    fc.record({
      carries: fc.subarray(ALLERGENS),
      mustNotMeet: fc.subarray(ALLERGENS, { maxLength: 1 }),
      units: fc.nat(50),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((runs): FoodRun[] => runs.map((run, position) => ({ foodCode: `food-${position}`, ...run })));

function permutations<Item>(items: readonly Item[]): Item[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item, position) => {
    return permutations(items.toSpliced(position, 1)).map((rest) => [item, ...rest]);
  });
}

const isSafe = (order: readonly FoodRun[]) =>
  order.every(({ mustNotMeet }, position) => {
    const metBy = order.slice(0, position + 1);
    return metBy.every(({ carries }) => mustNotMeet.every((allergen) => !carries.includes(allergen)));
  });

const minutesOf = (order: readonly FoodRun[]) =>
  order.slice(1).reduce((sum, run, position) => sum + changeoverMinutes(order[position] as FoodRun, run), 0);

test('no order that is safe takes fewer minutes, and none is found only where none is safe', () => {
  fc.assert(
    fc.property(someRuns, (runs) => {
      const safe = permutations(runs).filter(isSafe);
      const answer = orderFoods(runs);
      expect(answer.isPossible).toBe(safe.length > 0);
      if (!answer.isPossible) return;
      expect(isSafe(answer.order)).toBe(true);
      expect(answer.totalMinutes).toBe(Math.min(...safe.map(minutesOf)));
      expect(answer.changeovers.reduce((sum, minutes) => sum + minutes, 0)).toBe(answer.totalMinutes);
    }),
  );
});

test('the same foods come out in the same order however they were listed', () => {
  fc.assert(
    fc.property(someRuns, (runs) => {
      expect(orderFoods(runs.toReversed())).toEqual(orderFoods(runs));
    }),
  );
});
