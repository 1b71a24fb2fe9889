import { expect, test } from 'vitest';
import { clearingChange } from '../clearing-change.ts';
import { reverse } from '../movement-draft.ts';
import { lateCredit, sharedOut } from './charge-events.ts';
import { claimRaised } from './supplier-events.ts';

const charges = [
  { householdId: 'ashdown', amountMinorUnits: 600 },
  { householdId: 'birchall', amountMinorUnits: 0 },
];

test('a household whose charge is nothing gets no movement', () => {
  expect(sharedOut({ buyId: 'autumn', charges }).map(({ destination }) => destination.ownerId)).toEqual([
    'ashdown',
  ]);
});

test('a levy is a cost of the buy, so the charges carry it out again', () => {
  const drafts = sharedOut({ buyId: 'autumn', charges, levyMinorUnits: 600 });
  expect(clearingChange(drafts, 'autumn')).toBe(0);
  expect(clearingChange(drafts, 'spring')).toBe(0);
});

test('a correction that passes through a closed buy nets to nothing within its entry', () => {
  const raised = claimRaised({ buyId: 'autumn', supplierId: 'mill', claimId: 'late', amountMinorUnits: 600 });
  expect(clearingChange(raised, 'autumn')).toBe(-600);
  expect(clearingChange([...raised, ...sharedOutAgain()], 'autumn')).toBe(0);
});

test('shares of a late credit that do not add up to it are refused', () => {
  const credit = { from: 'bank', amountMinorUnits: 500, shares: charges } as const;
  expect(() => lateCredit(credit)).toThrow('add up');
});

test('a late credit of nothing is refused', () => {
  expect(() => lateCredit({ from: 'bank', amountMinorUnits: 0, shares: [] })).toThrow('other than zero');
});

test('what the storehouse bore itself of a line goes back to its common stock or its fund', () => {
  const drafts = lateCredit({
    from: { supplierId: 'mill' },
    amountMinorUnits: 1000,
    shares: charges,
    commonStock: [{ causeId: 'lot', amountMinorUnits: 300 }],
    storeFundMinorUnits: 100,
  });
  expect(drafts.map(({ source, amount }) => [source.kind, amount])).toEqual([
    ['household', 600],
    ['common_stock', 300],
    ['store_fund', 100],
  ]);
});

/** The households get back what the claim takes out of the clearing account. */
function sharedOutAgain() {
  return reverse(sharedOut({ buyId: 'autumn', charges }));
}
