import { expect, test } from 'vitest';
import { MONEY_KINDS } from './account-key.ts';
import { trialBalance } from './trial-balance.ts';

test('what households owe and what they are owed stand side by side, not set off', () => {
  const { rows, debitMinorUnits, creditMinorUnits, agrees } = trialBalance([
    { kind: 'household', inflow: 900, outflow: 200 },
    { kind: 'household', inflow: 100, outflow: 400 },
    { kind: 'bank', inflow: 600, outflow: 1000 },
  ]);
  expect(rows.find((row) => row.number === '1100')).toEqual({
    kind: 'household',
    number: '1100',
    name: 'Household balances',
    debitMinorUnits: 700,
    creditMinorUnits: 300,
  });
  expect([debitMinorUnits, creditMinorUnits, agrees]).toEqual([700, 700, true]);
});

test('every number of the chart has its row, also with nothing on it', () => {
  expect(trialBalance([]).rows.length).toBe(MONEY_KINDS.length);
  expect(trialBalance([]).agrees).toBe(true);
});

test('a book with half an entry in it does not agree', () => {
  expect(trialBalance([{ kind: 'bank', inflow: 500, outflow: 0 }]).agrees).toBe(false);
});
