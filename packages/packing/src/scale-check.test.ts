import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  judgeScale,
  judgeThermometer,
  SCALE_CHECK_DAYS,
  scaleStanding,
  THERMOMETER_TENTHS,
  thermometerReadingFromFahrenheit,
  thermometerReadingInFahrenheit,
  thermometerStanding,
} from './index.ts';

describe('a known weight on a scale', () => {
  test.for([
    { laid: 10_000, shown: 10_000, limit: 0, off: 0, isTrue: true, says: 'to the gram' },
    { laid: 10_000, shown: 10_010, limit: 10, off: 10, isTrue: true, says: 'at its limit above' },
    { laid: 10_000, shown: 9_990, limit: 10, off: -10, isTrue: true, says: 'at its limit below' },
    { laid: 10_000, shown: 10_011, limit: 10, off: 11, isTrue: false, says: 'a gram above its limit' },
    { laid: 10_000, shown: 9_989, limit: 10, off: -11, isTrue: false, says: 'a gram below its limit' },
    { laid: 10_000, shown: 10_001, limit: 0, off: 1, isTrue: false, says: 'a gram, where none is let' },
    { laid: 5_000, shown: 0, limit: 20, off: -5_000, isTrue: false, says: 'a scale that shows nothing' },
  ])('$says: off by $off g, true is $isTrue', ({ laid, shown, limit, off, isTrue }) => {
    const reading = { laidGrams: laid, shownGrams: shown, limitGrams: limit };
    expect(judgeScale(reading)).toEqual({ offByGrams: off, isTrue });
  });

  test.for([
    { laidGrams: 0, shownGrams: 0, limitGrams: 10 },
    { laidGrams: 100, shownGrams: -1, limitGrams: 10 },
    { laidGrams: 100, shownGrams: 100, limitGrams: -1 },
    { laidGrams: 100.5, shownGrams: 100, limitGrams: 1 },
  ])('%j is no reading', (reading) => {
    expect(() => judgeScale(reading)).toThrow();
  });

  test('is true exactly where it shows no more and no less than its limit lets it', () => {
    const grams = fc.nat(1_000);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000 }), grams, grams, (laidGrams, shownGrams, limitGrams) => {
        const { offByGrams, isTrue } = judgeScale({ laidGrams, shownGrams, limitGrams });
        expect(laidGrams + offByGrams).toBe(shownGrams);
        expect(isTrue).toBe(shownGrams <= laidGrams + limitGrams && shownGrams >= laidGrams - limitGrams);
      }),
    );
  });
});

describe('how a scale stands', () => {
  const check = (checkedOn: string, shownGrams = 10_004) => ({
    ...{ checkedOn, shownGrams, laidGrams: 10_000, limitGrams: 10 },
  });

  test.for([
    { says: 'nobody checked it', last: null, verdict: 'never-checked', off: null, days: null },
    { says: 'checked today', last: check('2026-11-30'), verdict: 'true', off: 4, days: 0 },
    { says: 'checked thirty days ago', last: check('2026-10-31'), verdict: 'true', off: 4, days: 30 },
    { says: 'checked 31 days ago', last: check('2026-10-30'), verdict: 'check-is-old', off: 4, days: 31 },
    { says: 'off today', last: check('2026-11-30', 10_020), verdict: 'off', off: 20, days: 0 },
    { says: 'off long ago', last: check('2026-01-30', 9_980), verdict: 'off', off: -20, days: 304 },
    { says: 'checked after the day asked', last: check('2026-12-02'), verdict: 'true', off: 4, days: 0 },
  ])('$says: $verdict', ({ last, verdict, off, days }) => {
    expect(scaleStanding(last, '2026-11-30')).toEqual({ verdict, offByGrams: off, daysSince: days });
  });

  test('thirty days are the interval that the trade works by', () => {
    expect(SCALE_CHECK_DAYS).toBe(30);
  });
});

describe('a thermometer in a known temperature', () => {
  test.for([
    { known: 0, shown: 0, limit: 0, off: 0, isTrue: true, says: 'right in ice water' },
    { known: 0, shown: 10, limit: 10, off: 10, isTrue: true, says: 'at its limit above' },
    {
      known: 0,
      shown: -10,
      limit: 10,
      off: -10,
      isTrue: true,
      says: 'at its limit below, under the ice point',
    },
    { known: 0, shown: 11, limit: 10, off: 11, isTrue: false, says: 'a tenth above its limit' },
    {
      known: 950,
      shown: 939,
      limit: 10,
      off: -11,
      isTrue: false,
      says: 'a tenth below in water that boils high up',
    },
    { known: 1000, shown: 999, limit: 0, off: -1, isTrue: false, says: 'a tenth, where none is let' },
    { known: -1000, shown: 3000, limit: 5, off: 4000, isTrue: false, says: 'from one end to the other' },
  ])('$says: off by $off tenths, true is $isTrue', ({ known, shown, limit, off, isTrue }) => {
    const reading = { knownTenths: known, shownTenths: shown, limitTenths: limit };
    expect(judgeThermometer(reading)).toEqual({ offByTenths: off, isTrue });
  });

  test.for([
    { knownTenths: THERMOMETER_TENTHS.least - 1, shownTenths: 0, limitTenths: 10 },
    { knownTenths: 0, shownTenths: THERMOMETER_TENTHS.most + 1, limitTenths: 10 },
    { knownTenths: 0, shownTenths: 0, limitTenths: -1 },
    { knownTenths: 0.5, shownTenths: 0, limitTenths: 10 },
    { knownTenths: 0, shownTenths: 0.5, limitTenths: 10 },
  ])('%j is no reading', (reading) => {
    expect(() => judgeThermometer(reading)).toThrow();
  });

  // By hand: 40 °F is 4.44 °C and 42 °F is 5.56 °C, kept as 4.4 and 5.6: 1.2 apart where 2 °F are 1.1.
  test('two degrees too many at 40 °F are within two degrees', () => {
    const kept = thermometerReadingFromFahrenheit({ known: 400, shown: 420, limit: 20 });
    expect(kept).toEqual({ knownTenths: 44, shownTenths: 55, limitTenths: 11 });
    expect(judgeThermometer(kept).isTrue).toBe(true);
    expect(thermometerReadingInFahrenheit(kept)).toEqual({ known: 400, shown: 420, limit: 20 });
  });

  test('ice water and boiling water at sea level are the fixed points of both scales', () => {
    const read = { known: 320, shown: 2120, limit: 0 };
    expect(thermometerReadingFromFahrenheit(read)).toEqual({
      knownTenths: 0,
      shownTenths: 1000,
      limitTenths: 0,
    });
  });

  test('read off in whole °F is true exactly where it is in °F, and is shown again as it was read', () => {
    const degrees = fc.integer({ min: -100, max: 500 }).map((whole) => whole * 10);
    const limits = fc.nat(20).map((whole) => whole * 10);
    const offs = fc.integer({ min: -25, max: 25 }).map((whole) => whole * 10);
    fc.assert(
      fc.property(degrees, offs, limits, (known, off, limit) => {
        const read = { known, shown: known + off, limit };
        const kept = thermometerReadingFromFahrenheit(read);
        expect(judgeThermometer(kept).isTrue).toBe(Math.abs(off) <= limit);
        expect(thermometerReadingInFahrenheit(kept)).toEqual(read);
      }),
    );
  });

  const check = (checkedOn: string, shownTenths = 4) => ({
    ...{ checkedOn, shownTenths, knownTenths: 0, limitTenths: 10 },
  });
  test.for([
    { says: 'nobody checked it', last: null, verdict: 'never-checked', off: null, days: null },
    { says: 'checked ninety days ago', last: check('2026-09-01'), verdict: 'true', off: 4, days: 90 },
    { says: 'checked 91 days ago', last: check('2026-08-31'), verdict: 'check-is-old', off: 4, days: 91 },
    { says: 'off long ago', last: check('2026-01-30', -20), verdict: 'off', off: -20, days: 304 },
  ])('$says stands as $verdict', ({ last, verdict, off, days }) => {
    expect(thermometerStanding(last, '2026-11-30')).toEqual({ verdict, offByTenths: off, daysSince: days });
  });
});
