import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { ageDebts } from './age-debts.ts';

const todayOn = '2026-12-31';

// Days from 2026-12-31 back: 30 is 1 Dec, 31 is 30 Nov, 60 is 1 Nov, 61 is 31 Oct, 90 is 2 Oct, 91 is 1 Oct.
test.for([
  { dueOn: '2027-01-15', age: 'days0To30MinorUnits', because: 'it is not due yet' },
  { dueOn: '2026-12-01', age: 'days0To30MinorUnits', because: 'it is 30 days old' },
  { dueOn: '2026-11-30', age: 'days31To60MinorUnits', because: 'it is 31 days old' },
  { dueOn: '2026-11-01', age: 'days31To60MinorUnits', because: 'it is 60 days old' },
  { dueOn: '2026-10-31', age: 'days61To90MinorUnits', because: 'it is 61 days old' },
  { dueOn: '2026-10-02', age: 'days61To90MinorUnits', because: 'it is 90 days old' },
  { dueOn: '2026-10-01', age: 'over90DaysMinorUnits', because: 'it is 91 days old' },
] as const)('a charge due on $dueOn counts under $age: $because', ({ dueOn, age }) => {
  const aged = ageDebts({ amounts: [{ dueOn, amountMinorUnits: 700 }], todayOn });
  expect(aged[age]).toBe(700);
});

test('payments settle the oldest charge first, whenever they were made', () => {
  const amounts = [
    { dueOn: '2026-12-20', amountMinorUnits: 300 },
    { dueOn: '2026-08-01', amountMinorUnits: 500 },
    { dueOn: '2026-12-25', amountMinorUnits: -600 },
  ];
  expect(ageDebts({ amounts, todayOn })).toEqual({
    days0To30MinorUnits: 200,
    days31To60MinorUnits: 0,
    days61To90MinorUnits: 0,
    over90DaysMinorUnits: 0,
    creditMinorUnits: 0,
    owesSinceOn: '2026-12-20',
  });
});

test('what was paid beyond all charges is credit', () => {
  const amounts = [
    { dueOn: '2026-12-20', amountMinorUnits: 300 },
    { dueOn: '2026-12-25', amountMinorUnits: -1000 },
  ];
  expect(ageDebts({ amounts, todayOn }).creditMinorUnits).toBe(700);
});

test('a day that does not exist is refused', () => {
  expect(() => ageDebts({ amounts: [{ dueOn: '2026-02-30', amountMinorUnits: 1 }], todayOn })).toThrow(
    'no calendar day',
  );
});

test('the ages less the credit are the balance', () => {
  const someAmount = fc.record({
    dueOn: fc
      .integer({ min: 0, max: 400 })
      .map((days) => new Date(1.76e12 + days * 864e5).toISOString().slice(0, 10)),
    amountMinorUnits: fc.integer({ min: -100_000, max: 100_000 }),
  });
  fc.assert(
    fc.property(fc.array(someAmount), (amounts) => {
      const { creditMinorUnits, owesSinceOn, ...ages } = ageDebts({ amounts, todayOn });
      const owed = Object.values(ages).reduce((sum, minorUnits) => sum + minorUnits, 0);
      const balance = amounts.reduce((sum, { amountMinorUnits }) => sum + amountMinorUnits, 0);
      expect(owed - creditMinorUnits).toBe(balance);
      expect(Object.values(ages).every((minorUnits) => minorUnits >= 0) && creditMinorUnits >= 0).toBe(true);
      expect(owed === 0 || creditMinorUnits === 0).toBe(true);
      expect(owesSinceOn === null).toBe(owed === 0);
    }),
  );
});
