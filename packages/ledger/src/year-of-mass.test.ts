import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { type MassSide, OUTSIDE_KINDS, yearOfMass } from './index.ts';

test('a year tells what came, was eaten, given and lost, and what is left', () => {
  const year = yearOfMass(10_000, [
    { side: 'supplier', inGrams: 22_680, outGrams: 680 },
    { side: 'others', inGrams: 2_000, outGrams: 5_000 },
    { side: 'eaten', inGrams: 100, outGrams: 9_100 },
    { side: 'given', inGrams: 0, outGrams: 4_800 },
    { side: 'spilled', inGrams: 0, outGrams: 200 },
    { side: 'unexplained', inGrams: 50, outGrams: 20 },
    { side: 'transformed', inGrams: 950, outGrams: 1_000 },
  ]);
  expect(year).toEqual({
    ...{ openingGrams: 10_000, landedGrams: 22_000, fromOthersGrams: 2_000, changedGrams: -50 },
    ...{ eatenGrams: 9_000, givenGrams: 4_800, lostGrams: 170, toOthersGrams: 5_000 },
    lost: [
      { by: 'spilled', grams: 200 },
      { by: 'unexplained', grams: -30 },
    ],
    closingGrams: 14_980,
  });
});

test('whatever moved, opening and what came are what was eaten, given, lost, passed on and left, to the gram', () => {
  const grams = fc.nat(1_000_000_000);
  const side = fc.constantFrom<MassSide>(...OUTSIDE_KINDS, 'others');
  const flows = fc.array(fc.record({ side, inGrams: grams, outGrams: grams }, { noNullPrototype: true }));
  fc.assert(
    fc.property(grams, flows, (openingGrams, moved) => {
      const year = yearOfMass(openingGrams, moved);
      const came = year.openingGrams + year.landedGrams + year.fromOthersGrams + year.changedGrams;
      const went = year.eatenGrams + year.givenGrams + year.lostGrams + year.toOthersGrams;
      expect(went + year.closingGrams).toBe(came);
    }),
  );
});
