import { expect, test } from 'vitest';
import { anOffer, aPledge } from './fill-builders.ts';
import { nextBag } from './next-bag.ts';

const wanting = (...wants: number[]) => wants.map((wanted, i) => aPledge([`h${i}`, 0, wanted, wanted, 5]));

// 140 lb: 10 lb fill a third bag of 50, 40 lb less leave two.
test('five wants of 140 lb lack 10 lb of a third bag, or are 40 lb above two', () => {
  expect(nextBag({ pledges: wanting(30, 45, 20, 15, 30), offers: [anOffer()] })).toEqual({
    wanted: 140,
    toFill: 10,
    toDrop: 40,
    offers: [{ bagOfferId: 'bag of 50', fullBags: 2, toFill: 10, toDrop: 40 }],
  });
});
test.for([
  { wants: [100], sizes: [50], toFill: 0, toDrop: 0, because: 'whole bags lack nothing' },
  { wants: [], sizes: [50], toFill: 0, toDrop: 0, because: 'nobody wants anything' },
  { wants: [60], sizes: [50, 25], toFill: 15, toDrop: 10, because: '50 + 25 = 75 is the next, 50 the last' },
  { wants: [30], sizes: [50, 20], toFill: 10, toDrop: 10, because: 'two of 20, or one' },
  { wants: [10], sizes: [50, 20], toFill: 10, toDrop: 10, because: 'one of 20, or nothing' },
])('$wants in bags of $sizes: $because', ({ wants, sizes, toFill, toDrop }) => {
  const offers = sizes.map((bagSize) => anOffer({ bagSize }));
  expect(nextBag({ pledges: wanting(...wants), offers })).toMatchObject({ toFill, toDrop });
});
test('a line without offers, or with a bag of nothing, is stopped', () => {
  expect(() => nextBag({ pledges: [], offers: [] })).toThrow(/at least one bag offer/);
  expect(() => nextBag({ pledges: [], offers: [anOffer({ bagSize: 0 })] })).toThrow(/at least one line unit/);
});
