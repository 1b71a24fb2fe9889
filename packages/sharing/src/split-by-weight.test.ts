import fc from 'fast-check';
import { expect, test } from 'vitest';
import { splitByExactWeight, splitByWeight } from './split-by-weight.ts';

const sum = (parts: readonly number[]) => parts.reduce((total, part) => total + part, 0);

test.for([
  { totalUnits: 100, weights: [1, 1, 1], parts: [34, 33, 33], because: 'a tie favours the earlier' },
  { totalUnits: 2, weights: [1, 1, 1], parts: [1, 1, 0], because: 'a tie favours the earlier twice' },
  { totalUnits: 0, weights: [5, 1], parts: [0, 0], because: 'nothing divides into nothing' },
  { totalUnits: 7, weights: [0, 3, 0], parts: [0, 7, 0], because: 'no weight, no share' },
  { totalUnits: 1, weights: [1, 2], parts: [0, 1], because: 'the larger fraction wins over the earlier' },
])('$totalUnits over $weights: $because', ({ totalUnits, weights, parts }) => {
  expect(splitByWeight(totalUnits, weights)).toEqual(parts);
});

// A packing session's costs by cans filled, 96/60/48/24 of 228: 30.00 of line fee is 12.6316, 7.8947, 6.3158, 3.1579;
// 1.33 a can needs no rounding; 5 scrapped cans cost 6.65, sundries 5.17. The spare cents go to the largest fractions.
test.for([
  { cost: 'line fee', totalCents: 3000, parts: [1263, 789, 632, 316] },
  { cost: 'supplies', totalCents: 30_324, parts: [12_768, 7980, 6384, 3192] },
  { cost: 'scrapped cans', totalCents: 665, parts: [280, 175, 140, 70] },
  { cost: 'sundries', totalCents: 517, parts: [218, 136, 109, 54] },
])('a session charges its $cost by cans to the cent', ({ totalCents, parts }) => {
  expect(splitByWeight(totalCents, [96, 60, 48, 24])).toEqual(parts);
});

test.for([
  { input: () => splitByWeight(1.5, [1]), message: /totalUnits must be a whole number/ },
  { input: () => splitByWeight(-1, [1]), message: /totalUnits must be a whole number/ },
  { input: () => splitByWeight(Number.NaN, [1]), message: /totalUnits must be a whole number/ },
  { input: () => splitByWeight(2 ** 53, [1]), message: /totalUnits must be a whole number/ },
  { input: () => splitByWeight(1, [0.5]), message: /weight must be a whole number/ },
  { input: () => splitByWeight(1, [0, 0]), message: /at least one weight must be positive/ },
  { input: () => splitByWeight(0, []), message: /at least one weight must be positive/ },
  { input: () => splitByExactWeight(1, [2n, -1n]), message: /no weight may be negative/ },
])('a division without sense is refused: $message', ({ input, message }) => {
  expect(input).toThrow(message);
});

const someWeights = fc
  .array(fc.integer({ min: 0, max: 10_000 }), { minLength: 1, maxLength: 12 })
  .filter((weights) => weights.some(Boolean));
const someTotal = fc.integer({ min: 0, max: 2 ** 50 });

test('parts add up to the whole and each differs from its exact share by less than one', () => {
  fc.assert(
    fc.property(someTotal, someWeights, (totalUnits, weights) => {
      const parts = splitByWeight(totalUnits, weights);
      expect(sum(parts)).toBe(totalUnits);
      const weightSum = BigInt(sum(weights));
      parts.forEach((part, position) => {
        const gap = BigInt(part) * weightSum - BigInt(totalUnits) * BigInt(weights[position] ?? 0);
        expect(gap < weightSum && gap > -weightSum).toBe(true);
      });
    }),
  );
});

test('equal weights get parts that differ by one at most, the earlier never less', () => {
  fc.assert(
    fc.property(someTotal, someWeights, (totalUnits, weights) => {
      const parts = splitByWeight(totalUnits, weights);
      weights.forEach((weight, position) => {
        const later = weights.indexOf(weight, position + 1);
        if (later === -1) return;
        const lead = (parts[position] ?? 0) - (parts[later] ?? 0);
        expect([0, 1]).toContain(lead);
      });
    }),
  );
});

test('turning the weights round turns the parts round when no fractions tie', () => {
  fc.assert(
    fc.property(someTotal, someWeights, (totalUnits, weights) => {
      const weightSum = BigInt(sum(weights));
      const rests = weights.map((weight) => (BigInt(totalUnits) * BigInt(weight)) % weightSum);
      fc.pre(new Set(rests).size === rests.length);
      expect(splitByWeight(totalUnits, weights.toReversed())).toEqual(
        splitByWeight(totalUnits, weights).toReversed(),
      );
    }),
  );
});

test('weights scaled by a factor past 2^53 give the same parts', () => {
  fc.assert(
    fc.property(someTotal, someWeights, (totalUnits, weights) => {
      const scaled = weights.map((weight) => BigInt(weight) * 10n ** 30n);
      expect(splitByExactWeight(totalUnits, scaled)).toEqual(splitByWeight(totalUnits, weights));
    }),
  );
});
