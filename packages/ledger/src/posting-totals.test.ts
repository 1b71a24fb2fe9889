import { expect, test } from 'vitest';
import { accountKeyText, CURRENCY, lotUnit } from './account-key.ts';
import { shareAwarded } from './events/bag-events.ts';
import { cashBanked, paymentReceived } from './events/payment-events.ts';
import { massAccount } from './mass-account.ts';
import { depositAccount, tillAccount } from './money-accounts.ts';
import { netDrafts, postingTotals } from './posting-totals.ts';

const batch = [
  ...cashBanked({ amountMinorUnits: 700 }),
  ...paymentReceived({ householdId: 'ashdown', amountMinorUnits: 700, till: 'cash_tin' }),
];

test('a batch comes down to one pair of totals for each account', () => {
  expect(postingTotals(batch).map(({ key, ins, outs }) => [key.kind, ins, outs])).toEqual([
    ['bank', 700, 0],
    ['cash_tin', 700, 700],
    ['household', 0, 700],
  ]);
});

test('the order of a batch does not matter, so cash banked before it was taken nets to an empty tin', () => {
  expect(postingTotals(batch.toReversed())).toEqual(postingTotals(batch));
  expect(netDrafts(batch).get(accountKeyText(CURRENCY, tillAccount('cash_tin')))).toEqual({
    ins: 700,
    outs: 700,
  });
});

test('accounts stand in the order of their key texts, which is the order of locking', () => {
  const award = (lotId: string) =>
    shareAwarded({ lotId, bagVesselId: 'b', unassignedOwnerId: 'u', ownerId: 'a', amountGrams: 5 });
  const keys = postingTotals([...award('z'), ...batch, ...award('a')]).map(({ accountKey }) => accountKey);
  expect(keys).toEqual(keys.toSorted());
});

test('grams of two lots in one bag under one owner are two accounts', () => {
  const inBag = massAccount('bag-1', 'ashdown');
  expect(accountKeyText(lotUnit('wheat'), inBag)).not.toBe(accountKeyText(lotUnit('oats'), inBag));
});

test('the deposits of one household on two buys are two accounts', () => {
  const on = (buyId: string) => accountKeyText(CURRENCY, depositAccount({ householdId: 'ashdown', buyId }));
  expect(on('spring')).not.toBe(on('autumn'));
});

test('ids with separators in them cannot make two accounts look like one', () => {
  const key = { kind: 'buy_deposit', vesselId: null } as const;
  const first = accountKeyText(CURRENCY, { ...key, ownerId: 'a","b', causeId: 'c' });
  expect(first).not.toBe(accountKeyText(CURRENCY, { ...key, ownerId: 'a', causeId: 'b","c' }));
});
