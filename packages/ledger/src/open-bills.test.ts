import { sumOf } from '@sheafbook/units';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { openBills } from './open-bills.ts';

const bills = [
  { billId: 'grain', dueOn: '2026-10-15', minorUnits: 52_350 },
  { billId: 'beans', dueOn: '2026-11-02', minorUnits: 10_000 },
];

test('what was paid settles the bill that fell due first', () => {
  // 62,350 billed, 20,000 paid: 42,350 are owed, 32,350 of the first bill and all of the second.
  expect(openBills(bills, 42_350)).toEqual([
    { billId: 'grain', dueOn: '2026-10-15', minorUnits: 32_350 },
    { billId: 'beans', dueOn: '2026-11-02', minorUnits: 10_000 },
  ]);
  expect(openBills(bills, 9000)).toEqual([{ billId: 'beans', dueOn: '2026-11-02', minorUnits: 9000 }]);
});

test('what is owed beyond all bills was brought over and has no day', () => {
  expect(openBills(bills, 63_000)[0]).toEqual({ billId: null, dueOn: null, minorUnits: 650 });
});

test('nothing is open of a supplier that was paid ahead', () => {
  expect(openBills(bills, -500)).toEqual([]);
  expect(openBills(bills, 0)).toEqual([]);
});

test('the parts are what is owed, none is more than its bill, and they stand in the order of their days', () => {
  const bill = fc.record({
    billId: fc.uuid(),
    dueOn: fc.integer({ min: 10, max: 28 }).map((day) => `2026-11-${day}`),
    minorUnits: fc.integer({ min: 1, max: 100_000 }),
  });
  const some = fc.uniqueArray(bill, { selector: ({ billId }) => billId, maxLength: 8 });
  fc.assert(
    fc.property(some, fc.integer({ min: 0, max: 1_000_000 }), (known, owed) => {
      const open = openBills(known, owed);
      expect(sumOf(open.map(({ minorUnits }) => minorUnits))).toBe(owed);
      for (const { billId, minorUnits } of open.filter((one) => one.billId !== null))
        expect(minorUnits).toBeLessThanOrEqual(known.find((one) => one.billId === billId)?.minorUnits ?? 0);
      const days = open.map(({ dueOn }) => dueOn ?? '');
      expect(days).toEqual(days.toSorted());
    }),
  );
});
