import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { reweighed } from './reweighed.ts';

const vessel = { lotId: 'wheat', vesselId: 'bag-1', unexplainedVesselId: 'unexplained' };
const owners = [
  { ownerId: 'ashdown', bookedGrams: 10_000 },
  { ownerId: 'birchall', bookedGrams: 5_000 },
  { ownerId: 'corran', bookedGrams: 5_000 },
];

// 11 g missing of 20,000: exact parts 5.5, 2.75, 2.75; floors 5, 2, 2; the 2 left go to the two remainders of 3/4.
test('what is missing from a shared bag is borne by largest remainder and lies among the unexplained', () => {
  const drafts = reweighed({ ...vessel, owners, weighedGrams: 19_989 });
  expect(
    drafts.map(({ source, destination, amount }) => [source.vesselId, destination.vesselId, amount]),
  ).toEqual([
    ['bag-1', 'unexplained', 5],
    ['bag-1', 'unexplained', 3],
    ['bag-1', 'unexplained', 3],
  ]);
  expect(drafts.map(({ destination }) => destination.ownerId)).toEqual(['ashdown', 'birchall', 'corran']);
});

test('what is over comes out of the unexplained, the earlier seat taking a tied gram', () => {
  const drafts = reweighed({ ...vessel, owners: owners.slice(1), weighedGrams: 10_001 });
  expect(
    drafts.map(({ source, destination, amount }) => [source.vesselId, destination.ownerId, amount]),
  ).toEqual([['unexplained', 'birchall', 1]]);
});

// 300 g missing of 20,000, of which 200 dried away: each bears both by its grams, a half and two quarters.
test('what moisture explains lies apart from the unexplained, both borne by the same rule', () => {
  const moisture = { vesselId: 'moisture', grams: -200 };
  const drafts = reweighed({ ...vessel, owners, weighedGrams: 19_700, moisture });
  expect(
    drafts.map(({ source, destination, amount }) => [source.ownerId, destination.vesselId, amount]),
  ).toEqual([
    ['ashdown', 'moisture', 100],
    ['birchall', 'moisture', 50],
    ['corran', 'moisture', 50],
    ['ashdown', 'unexplained', 50],
    ['birchall', 'unexplained', 25],
    ['corran', 'unexplained', 25],
  ]);
  const damper = reweighed({ ...vessel, owners, weighedGrams: 20_004, moisture: { ...moisture, grams: 4 } });
  expect(damper.map(({ source, amount }) => [source.vesselId, amount])).toEqual([
    ['moisture', 2],
    ['moisture', 1],
    ['moisture', 1],
  ]);
});

test.for([-301, 1])(
  'moisture explains part of the difference at most, so %i g of 300 missing are refused',
  (grams) => {
    expect(() =>
      reweighed({ ...vessel, owners, weighedGrams: 19_700, moisture: { vesselId: 'moisture', grams } }),
    ).toThrow('part of the difference');
  },
);

test('a vessel that weighs what is booked moves nothing', () => {
  expect(reweighed({ ...vessel, owners, weighedGrams: 20_000 })).toEqual([]);
});

test('an empty vessel that weighs something credits its one owner, and of several nobody', () => {
  const empty = ['ashdown', 'birchall'].map((ownerId) => ({ ownerId, bookedGrams: 0 }));
  expect(() => reweighed({ ...vessel, owners: empty, weighedGrams: 5 })).toThrow('no owner');
  const found = reweighed({ ...vessel, owners: empty.slice(0, 1), weighedGrams: 5 });
  expect(
    found.map(({ source, destination, amount }) => [source.vesselId, destination.ownerId, amount]),
  ).toEqual([['unexplained', 'ashdown', 5]]);
});

test('afterwards the owners hold what was weighed, and nobody less than nothing', () => {
  const booked = fc
    .array(fc.nat(1_000_000), { minLength: 1, maxLength: 12 })
    .filter((some) => some.some(Boolean));
  fc.assert(
    fc.property(booked, fc.nat(12_000_000), (grams, weighedGrams) => {
      const held = new Map(grams.map((bookedGrams, seat) => [`seat-${seat}`, bookedGrams]));
      const owned = [...held].map(([ownerId, bookedGrams]) => ({ ownerId, bookedGrams }));
      for (const { source, destination, amount } of reweighed({ ...vessel, owners: owned, weighedGrams })) {
        const owner = source.ownerId ?? '';
        const change = destination.vesselId === 'bag-1' ? amount : -amount;
        held.set(owner, (held.get(owner) ?? 0) + change);
      }
      expect([...held.values()].reduce((sum, left) => sum + left, 0)).toBe(weighedGrams);
      expect([...held.values()].every((left) => left >= 0)).toBe(true);
    }),
  );
});
