import { expect, test } from 'vitest';
import { claimValue } from './claim-value.ts';

test('the claims of autumn grain are 21.40 for a short bag and 3.60 for a torn one', () => {
  expect(claimValue({ bagPriceMinorUnits: 2140, shortBags: 1, damaged: [] })).toEqual({
    shortMinorUnits: 2140,
    damageMinorUnits: 0,
    claimMinorUnits: 2140,
  });
  // A bag of 50 lb tore and lost 5 lb, 2,268 of 22,680 g: a tenth of 36.00.
  const torn = { declaredGrams: 22_680, lostGrams: 2268 };
  expect(claimValue({ bagPriceMinorUnits: 3600, shortBags: 0, damaged: [torn] }).claimMinorUnits).toBe(360);
});

test('each damaged bag is rounded by itself, a half going up', () => {
  // Half of 0.25 twice is 0.13 + 0.13, not 0.25; a bag lost whole costs its price.
  const half = { declaredGrams: 20, lostGrams: 10 };
  const whole = { declaredGrams: 20, lostGrams: 20 };
  expect(claimValue({ bagPriceMinorUnits: 25, shortBags: 2, damaged: [half, half, whole] })).toEqual({
    shortMinorUnits: 50,
    damageMinorUnits: 51,
    claimMinorUnits: 101,
  });
});

test.for([
  { declaredGrams: 0, lostGrams: 0, shortBags: 0, message: /must declare its mass/ },
  { declaredGrams: 10, lostGrams: 11, shortBags: 0, message: /cannot lose more than it declares/ },
  { declaredGrams: 10, lostGrams: -1, shortBags: 0, message: /lostGrams must be a whole number/ },
  { declaredGrams: 10, lostGrams: 1, shortBags: -1, message: /shortBags must be a whole number/ },
])('a claim without sense is refused: $message', ({ declaredGrams, lostGrams, shortBags, message }) => {
  const claim = { bagPriceMinorUnits: 100, shortBags, damaged: [{ declaredGrams, lostGrams }] };
  expect(() => claimValue(claim)).toThrow(message);
});
