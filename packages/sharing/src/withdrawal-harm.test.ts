import { expect, test } from 'vitest';
import { withdrawalHarm } from './withdrawal-harm.ts';

const estimates = (amounts: Record<string, number>) =>
  Object.entries(amounts).map(([ownerId, estimateMinorUnits]) => ({ ownerId, estimateMinorUnits }));
const before = estimates({ Ashdown: 10_000, Birchall: 8000, Corran: 6000, Dell: 5000 });

test('a withdrawal that harms nobody gets its whole deposit back', () => {
  const after = estimates({ Ashdown: 10_000, Birchall: 7900, Corran: 6000 });
  expect(
    withdrawalHarm({
      withdrawerId: 'Dell',
      before,
      after,
      newUnfilledMinorUnits: 0,
      depositMinorUnits: 2000,
    }),
  ).toEqual({ harmMinorUnits: 0, withheldMinorUnits: 0, refundMinorUnits: 2000 });
});

test('rises of the others and mass left unfilled are withheld, falls are not set against them', () => {
  // Ashdown +250, Birchall −500, Corran +50, unfilled 700: harm 1000.
  const after = estimates({ Ashdown: 10_250, Birchall: 7500, Corran: 6050 });
  expect(
    withdrawalHarm({
      withdrawerId: 'Dell',
      before,
      after,
      newUnfilledMinorUnits: 700,
      depositMinorUnits: 2000,
    }),
  ).toEqual({ harmMinorUnits: 1000, withheldMinorUnits: 1000, refundMinorUnits: 1000 });
});

test('no more than the deposit is withheld', () => {
  const after = estimates({ Ashdown: 13_000 });
  expect(
    withdrawalHarm({
      withdrawerId: 'Dell',
      before,
      after,
      newUnfilledMinorUnits: 0,
      depositMinorUnits: 2000,
    }),
  ).toEqual({ harmMinorUnits: 3000, withheldMinorUnits: 2000, refundMinorUnits: 0 });
});

test('whoever withdrew, came in anew or dropped out is not among the harmed', () => {
  const after = estimates({ Ashdown: 10_000, Eskdale: 9000, Dell: 9999 });
  expect(
    withdrawalHarm({ withdrawerId: 'Dell', before, after, newUnfilledMinorUnits: 0, depositMinorUnits: 2000 })
      .harmMinorUnits,
  ).toBe(0);
});

test.for([
  { unfilled: -1, deposit: 0, message: /newUnfilledMinorUnits/ },
  { unfilled: 0, deposit: 0.5, message: /depositMinorUnits/ },
])('a harm without sense is refused: $message', ({ unfilled, deposit, message }) => {
  expect(() =>
    withdrawalHarm({
      withdrawerId: 'Dell',
      before,
      after: before,
      newUnfilledMinorUnits: unfilled,
      depositMinorUnits: deposit,
    }),
  ).toThrow(message);
});
