import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leaveShut, type ShutItem } from './leave-shut.ts';

const can = (code: string, more: Partial<ShutItem> = {}): ShutItem => ({
  ...{ code, foodCode: 'wheat', packedOn: '2015-01-01', openedDays: 365 },
  ...{ isOnHold: false, isOpen: false, daysLeft: 5_000, atRiskGrams: 0, isAnEatersOnlyStock: false },
  ...more,
});
const said = (items: readonly ShutItem[]) =>
  leaveShut(items).map(({ item, because, inPlaceOf, costsDays }) => ({
    ...{ code: item.code, because, inPlaceOf: inPlaceOf.code, costsDays },
  }));

test('a good old can stays shut while a newer pail ends first, or while one of its food is open', () => {
  const newer = can('PAIL', { packedOn: '2024-06-01', daysLeft: 900 });
  expect(said([can('OLD'), newer])).toEqual([
    { code: 'OLD', because: 'older-but-keeps-longer', inPlaceOf: 'PAIL', costsDays: 4_635 },
  ]);
  const open = can('OPEN', { packedOn: '2025-01-01', daysLeft: 80, isOpen: true });
  expect(said([can('OLD'), open, newer])).toEqual([
    { code: 'PAIL', because: 'one-is-open', inPlaceOf: 'OPEN', costsDays: 535 },
    { code: 'OLD', because: 'one-is-open', inPlaceOf: 'OPEN', costsDays: 4_635 },
  ]);
});

test('nothing is said of the next one, of another food, of what is at risk or ends before it would open', () => {
  const next = can('NEXT', { packedOn: '2024-06-01', daysLeft: 900 });
  expect(said([next])).toEqual([]);
  expect(said([next, can('RICE', { foodCode: 'rice' })])).toEqual([]);
  expect(said([next, can('MUCH', { atRiskGrams: 1 })])).toEqual([]);
  expect(
    said([can('NEXT', { daysLeft: 90 }), can('SOON', { daysLeft: 300, packedOn: '2014-01-01' })]),
  ).toEqual([]);
  expect(said([next, can('SAME', { packedOn: '2024-07-01' })])).toEqual([]); // nobody is tempted by a newer one
  expect(said([next, can('HELD', { isOnHold: true })])).toEqual([]);
});

test('whatever there is, what comes first of a food, what is open and what is at risk is never held back', () => {
  const item = fc.record({
    foodCode: fc.constantFrom('wheat', 'rice'),
    packedOn: fc.constantFrom('2014-05-01', '2020-05-01', '2025-05-01'),
    isOpen: fc.boolean(),
    isOnHold: fc.boolean(),
    isAnEatersOnlyStock: fc.boolean(),
    daysLeft: fc.nat(6_000),
    atRiskGrams: fc.nat(2),
  });
  fc.assert(
    fc.property(fc.array(item, { maxLength: 8 }), (rows) => {
      const items = rows.map((row, at) => can(`C${at}`, row));
      for (const { item: left, inPlaceOf, costsDays } of leaveShut(items)) {
        expect(left).toMatchObject({ isOpen: false, isOnHold: false, atRiskGrams: 0 });
        expect(costsDays).toBeGreaterThan(0);
        expect(inPlaceOf.foodCode).toBe(left.foodCode);
        expect(inPlaceOf.isOpen || inPlaceOf.daysLeft <= left.daysLeft).toBe(true);
      }
    }),
  );
});
