import fc from 'fast-check';
import { expect, test } from 'vitest';
import { depositMinorUnits, levyMinorUnits, settleDeposit } from './deposit.ts';

// Autumn grain at 40 %: 71.20, 62.54, 52.80 and 22.86, each up to a whole unit of the currency; 211.00 in all.
test.for([
  { estimate: 17_800, deposit: 7200 },
  { estimate: 15_635, deposit: 6300 },
  { estimate: 13_200, deposit: 5300 },
  { estimate: 5715, deposit: 2300 },
])('the deposit on an estimate of $estimate cents is $deposit', ({ estimate, deposit }) => {
  expect(depositMinorUnits(estimate, 40)).toBe(deposit);
});

test.for([
  { estimate: 10_000, percent: 40, exponent: 2, deposit: 4000, because: 'whole units stay' },
  { estimate: 10_001, percent: 40, exponent: 2, deposit: 4100, because: 'a part of a cent counts' },
  { estimate: 1001, percent: 40, exponent: 0, deposit: 401, because: 'a yen has no parts' },
  { estimate: 10_010, percent: 40, exponent: 3, deposit: 5000, because: 'a dinar has a thousand' },
  { estimate: 5715, percent: 0, exponent: 2, deposit: 0, because: 'no per cent is no deposit' },
  { estimate: 0, percent: 40, exponent: 2, deposit: 0, because: 'nothing of nothing' },
])(
  'the deposit on $estimate at $percent % is $deposit: $because',
  ({ estimate, percent, exponent, deposit }) => {
    expect(depositMinorUnits(estimate, percent, exponent)).toBe(deposit);
  },
);

// Balances of autumn grain after deposits: 93.48, 87.53, 74.92 and 31.57. With Dell withdrawn, its charge of 11.00 leaves
// 12.00 of its deposit of 23.00 to go back.
test.for([
  { deposit: 7200, charge: 16_548, settled: [7200, 0, 9348] },
  { deposit: 6300, charge: 15_053, settled: [6300, 0, 8753] },
  { deposit: 5300, charge: 12_792, settled: [5300, 0, 7492] },
  { deposit: 2300, charge: 5457, settled: [2300, 0, 3157] },
  { deposit: 2300, charge: 1100, settled: [1100, 1200, 0] },
])('a deposit of $deposit against a charge of $charge', ({ deposit, charge, settled }) => {
  const { appliedMinorUnits, refundMinorUnits, balanceMinorUnits } = settleDeposit(deposit, charge);
  expect([appliedMinorUnits, refundMinorUnits, balanceMinorUnits]).toEqual(settled);
});

test.for([
  { goods: 41_050, hundredths: 250, levy: 1026, because: '1026.25 goes down' },
  { goods: 20, hundredths: 250, levy: 1, because: 'a half goes up' },
  { goods: 19, hundredths: 250, levy: 0, because: 'less than a half goes down' },
  { goods: 41_050, hundredths: 0, levy: 0, because: 'no levy' },
])(
  'the levy on $goods at $hundredths hundredths of a per cent is $levy: $because',
  ({ goods, hundredths, levy }) => {
    expect(levyMinorUnits(goods, hundredths)).toBe(levy);
  },
);

test('a deposit is whole units, at least its per cent and less than a unit above it', () => {
  fc.assert(
    fc.property(fc.nat(10_000_000), fc.nat(100), (estimate, percent) => {
      const deposit = depositMinorUnits(estimate, percent);
      expect(deposit % 100).toBe(0);
      expect(deposit * 100).toBeGreaterThanOrEqual(estimate * percent);
      expect((deposit - 100) * 100).toBeLessThan(estimate * percent || 1);
    }),
  );
});

test.for([
  { input: () => depositMinorUnits(-1, 40), message: /estimateMinorUnits/ },
  { input: () => depositMinorUnits(1, 0.4), message: /percent/ },
  { input: () => depositMinorUnits(1, 40, 5), message: /no currency has more than 4 decimals/ },
  { input: () => settleDeposit(-1, 0), message: /depositHeldMinorUnits/ },
  { input: () => settleDeposit(0, 1.5), message: /chargeMinorUnits/ },
  { input: () => levyMinorUnits(1, -1), message: /percentHundredths/ },
])('an amount without sense is refused: $message', ({ input, message }) => {
  expect(input).toThrow(message);
});
