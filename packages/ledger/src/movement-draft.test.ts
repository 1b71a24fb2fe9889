import { expect, test } from 'vitest';
import { householdAccount, tillAccount } from './money-accounts.ts';
import { debitCredit, reverse, withoutZeroShares } from './movement-draft.ts';

const debit = tillAccount('bank');
const credit = householdAccount('ashdown');

test('the destination of a movement is debited and its source credited', () => {
  expect(debitCredit({ debit, credit, amountMinorUnits: 500 })).toEqual({
    unit: { kind: 'currency' },
    source: credit,
    destination: debit,
    amount: 500,
  });
});

test.for([0, -1, 0.5, Number.NaN, 2 ** 53])('an amount of %s moves nothing', (amountMinorUnits) => {
  expect(() => debitCredit({ debit, credit, amountMinorUnits })).toThrow(/amount/);
});

test('money moves between two accounts, never within one', () => {
  expect(() => debitCredit({ debit, credit: debit, amountMinorUnits: 1 })).toThrow('two different accounts');
});

test('undoing swaps source and destination and keeps the amount', () => {
  const [undone] = reverse([debitCredit({ debit, credit, amountMinorUnits: 500 })]);
  expect(undone).toMatchObject({ source: debit, destination: credit, amount: 500 });
});

test('a share of nothing is left out, and a share below nothing refused', () => {
  expect(withoutZeroShares([{ amountMinorUnits: 0 }, { amountMinorUnits: 3 }])).toEqual([
    { amountMinorUnits: 3 },
  ]);
  expect(() => withoutZeroShares([{ amountMinorUnits: -3 }])).toThrow('amountMinorUnits');
});
