import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeScale, SCALE_CHECK_DAYS, scaleStanding } from './index.ts';

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
