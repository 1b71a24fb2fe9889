import { judgeTare, netOfGross, TARE_CONTAINERS } from '@sheafbook/packing';
import fc from 'fast-check';
import { expect, test } from 'vitest';

// Job map 6: "container net = gross − tare of kind (… 10 weighed, mean, max−min ≤ 6 g else tare each)". The map gives the rule and
// no readings, so these ten are ours. By hand: 318+319+320+320+321+321+322+322+323+324 = 3210, a tenth of it 321; 324 − 318 = 6.
const ALIKE = [318, 319, 320, 320, 321, 321, 322, 322, 323, 324];

test('ten empty cans that differ by six grams have one tare, and a can at 2,921 g gross holds the net of the rule', () => {
  expect(judgeTare(ALIKE)).toEqual({
    ...{ meanGrams: 321, leastGrams: 318, mostGrams: 324, spreadGrams: 6, isAlike: true },
  });
  expect(netOfGross(2921, 321)).toBe(2600);
});

test.for([
  {
    last: 325,
    isAlike: false,
    meanGrams: 321,
    because: 'seven grams apart are too many; 3211 / 10 rounds down',
  },
  { last: 319, isAlike: true, meanGrams: 321, because: '3205 / 10 is a half, which rounds up' },
  { last: 318, isAlike: true, meanGrams: 320, because: '3204 / 10 rounds down' },
])('a tenth can of $last g: $because', ({ last, isAlike, meanGrams }) => {
  expect(judgeTare([...ALIKE.slice(0, 9), last])).toMatchObject({ isAlike, meanGrams });
});

test('a container that alone weighs what the scale says holds nothing', () => {
  expect(netOfGross(321, 321)).toBeNull();
  expect(netOfGross(320, 321)).toBeNull();
  expect(netOfGross(322, 321)).toBe(1);
});

test.for([
  { readings: ALIKE.slice(0, 9), because: 'nine are too few' },
  { readings: [...ALIKE, 320], because: 'eleven are too many' },
  { readings: [...ALIKE.slice(0, 9), 0], because: 'an empty can weighs something' },
  { readings: [...ALIKE.slice(0, 9), 320.5], because: 'half grams are no grams' },
  { readings: [...ALIKE.slice(0, 9), 100_001], because: 'nobody carries that' },
])('$because', ({ readings }) => {
  expect(() => judgeTare(readings)).toThrow();
});

test('the mean lies between the lightest and the heaviest, in whatever order they were weighed', () => {
  const ten = fc.array(fc.integer({ min: 1, max: 5000 }), {
    ...{ minLength: TARE_CONTAINERS, maxLength: TARE_CONTAINERS },
  });
  fc.assert(
    fc.property(ten, (readings) => {
      const { leastGrams, meanGrams, mostGrams } = judgeTare(readings);
      expect(meanGrams).toBeGreaterThanOrEqual(leastGrams);
      expect(meanGrams).toBeLessThanOrEqual(mostGrams);
      expect(judgeTare(readings.toReversed())).toEqual(judgeTare(readings));
    }),
  );
});
