import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { asFraction } from './decimal.ts';
import { formatMass } from './mass-format.ts';
import { parseMass } from './mass-text.ts';

const wheat = { defaultUnit: 'lb', bushelPoundsOf: 60 } as const;

describe('a mass as people type it', () => {
  // Grams worked by hand from 1 lb = 453.59237 g, a half going up.
  test.for([
    { text: '25 lb', grams: 11_340, count: 25, unit: 'lb' },
    { text: '25lbs.', grams: 11_340, count: 25, unit: 'lb' },
    { text: '25', grams: 11_340, count: 25, unit: 'lb' },
    { text: '50#', grams: 22_680, count: 50, unit: 'lb' },
    { text: '  50\u00a0LB ', grams: 22_680, count: 50, unit: 'lb' },
    { text: '1,000 lb', grams: 453_592, count: 1000, unit: 'lb' },
    { text: '12,5 kg', grams: 12_500, count: 12.5, unit: 'kg' },
    { text: '12.5 kilos', grams: 12_500, count: 12.5, unit: 'kg' },
    { text: '1 1/2 lb', grams: 680, count: 1.5, unit: 'lb' },
    { text: '1-1/2 lb', grams: 680, count: 1.5, unit: 'lb' },
    { text: '1½ libras', grams: 680, count: 1.5, unit: 'lb' },
    { text: '1/2 bu', grams: 13_608, count: 30, unit: 'lb' },
    { text: '2 bushels', grams: 54_431, count: 120, unit: 'lb' },
    { text: '2 lb 3 oz', grams: 992, count: 2.1875, unit: 'lb' },
    { text: '2 lb, 3½ oz', grams: 1006, count: 2.21875, unit: 'lb' },
    { text: '3 kg 200 g', grams: 3200, count: 3.2, unit: 'kg' },
    { text: '750 gramos', grams: 750, count: 750, unit: 'g' },
    { text: '8 onzas', grams: 227, count: 8, unit: 'oz' },
  ])('"$text" is $grams g', ({ text, grams, count, unit }) => {
    expect(parseMass(text, wheat)).toEqual({ grams, count: asFraction(count), unit });
  });

  test('a bare number means the unit of the storehouse', () => {
    expect(parseMass('12,5', { defaultUnit: 'kg' })).toMatchObject({ grams: 12_500, unit: 'kg' });
  });
});

describe('a mass that is refused', () => {
  test.for([
    { text: '', problem: 'empty' },
    { text: ' \u00a0 ', problem: 'empty' },
    { text: 'a sack', problem: 'not-a-number' },
    { text: 'lb 25', problem: 'not-a-number' },
    { text: '1/0 lb', problem: 'not-a-number' },
    { text: '2 lb 3', problem: 'not-a-number' },
    { text: '3 oz 2 lb', problem: 'not-a-number' },
    { text: '2 lb 3 kg', problem: 'not-a-number' },
    { text: '1 lb 2 lb 3 oz', problem: 'not-a-number' },
    { text: '10-5 lb', problem: 'not-a-number' },
    { text: '1 000 lb', problem: 'not-a-number' },
    { text: `${'9'.repeat(101)} lb`, problem: 'not-a-number' },
    { text: '-5 lb', problem: 'negative' },
    { text: '− 5 lb', problem: 'negative' },
    { text: '2 lb -3 oz', problem: 'negative' },
    { text: '0', problem: 'zero' },
    { text: '0 lb 0 oz', problem: 'zero' },
    { text: '0.4 g', problem: 'zero' },
    { text: '1000001 kg', problem: 'too-large' },
    { text: '99999999999999999999 lb', problem: 'too-large' },
    { text: '5 stone', problem: 'unknown-unit' },
    { text: '2 tons', problem: 'unknown-unit' },
    { text: '25 lb wheat', problem: 'unknown-unit' },
  ])('"$text" is $problem', ({ text, problem }) => {
    expect(parseMass(text, wheat)).toEqual({ problem });
  });

  test('a bushel of a food that has no trade weight is an unknown unit', () => {
    expect(parseMass('1/2 bu', { defaultUnit: 'lb' })).toEqual({ problem: 'unknown-unit' });
  });

  test('a bushel that weighs nothing is the programmer’s mistake', () => {
    expect(() => parseMass('1 bu', { defaultUnit: 'lb', bushelPoundsOf: 0 })).toThrow(AssertionError);
  });

  test('no text at all makes the reader throw', () => {
    const alphabet = fc.constantFrom(...'0123456789.,/- −½¼#lbkgozu\u00a0e');
    const someText = fc.oneof(fc.string(), fc.string({ unit: alphabet, maxLength: 40 }));
    fc.assert(
      fc.property(someText, (text) => {
        const typed = parseMass(text, wheat);
        if ('problem' in typed) return;
        expect(typed.grams).toSatisfy((grams: number) => Number.isSafeInteger(grams) && grams > 0);
      }),
      { numRuns: 2000 },
    );
  });
});

test('what the screen shows in pounds or kilograms is read back to within its last digit', () => {
  const someUnit = fc.constantFrom('lb', 'kg');
  const someGrams = fc.integer({ min: 100, max: 99_000_000 });
  fc.assert(
    fc.property(someGrams, someUnit, fc.constantFrom('en', 'es'), (grams, unit, locale) => {
      const typed = parseMass(formatMass(grams, { unit, locale }), { defaultUnit: 'g' });
      // Half of 0.1 lb is 22.68 g, half of 0.1 kg is 50 g; the reader rounds once more by half a gram.
      const slack = unit === 'lb' ? 23.2 : grams < 9_995 ? 5.5 : 50.5;
      expect('grams' in typed && Math.abs(typed.grams - grams)).toBeLessThanOrEqual(slack);
    }),
  );
});
