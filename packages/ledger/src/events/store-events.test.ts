import { expect, test } from 'vitest';
import { householdAccount, moneyAccount, storeFundAccount } from '../money-accounts.ts';
import { commonStockCounted, commonStockSold, openingBalance, yearEnd } from './store-events.ts';

test('an opening debt comes out of the store fund, an opening credit goes into it, nothing moves nothing', () => {
  const account = householdAccount('ashdown');
  const [debt] = openingBalance({ account, balanceMinorUnits: 500 });
  const [credit] = openingBalance({ account, balanceMinorUnits: -500 });
  expect([debt?.source, debt?.destination]).toEqual([storeFundAccount(), account]);
  expect([credit?.source, credit?.destination]).toEqual([account, storeFundAccount()]);
  expect(openingBalance({ account, balanceMinorUnits: 0 })).toEqual([]);
});

test('a year ends with each fee and each loss at nothing, whatever order they are given in', () => {
  const accounts = [
    { key: moneyAccount('losses', { causeId: 'mould' }), balanceMinorUnits: 40 },
    { key: moneyAccount('bank_charges'), balanceMinorUnits: 0 },
    { key: moneyAccount('cash_gifts'), balanceMinorUnits: -100 },
  ];
  const drafts = yearEnd({ accounts });
  expect(drafts.map(({ source, destination, amount }) => [source.kind, destination.kind, amount])).toEqual([
    ['store_fund', 'cash_gifts', 100],
    ['losses', 'store_fund', 40],
  ]);
  expect(yearEnd({ accounts: accounts.toReversed() })).toEqual(drafts);
});

test('what a household owes does not end with the year, nor does the value given away', () => {
  for (const key of [householdAccount('ashdown'), moneyAccount('given_value')]) {
    const accounts = [{ key, balanceMinorUnits: 5 }];
    expect(() => yearEnd({ accounts })).toThrow('does not end with the year');
  }
});

test('a sale for nothing at all is none', () => {
  expect(() => commonStockSold({ householdId: 'ashdown', causeId: 'lot', costMinorUnits: 0 })).toThrow(
    'a cost',
  );
});

test('stock that a count misses is a loss at cost, what is over takes one back, and a trifle posts nothing', () => {
  const sides = (differenceMinorUnits: number) =>
    commonStockCounted({ causeId: 'lot', differenceMinorUnits }).map(({ source, destination, amount }) => [
      destination.kind,
      source.kind,
      amount,
    ]);
  expect(sides(-250)).toEqual([['losses', 'common_stock', 250]]);
  expect(sides(250)).toEqual([['common_stock', 'losses', 250]]);
  expect(sides(0)).toEqual([]);
});
