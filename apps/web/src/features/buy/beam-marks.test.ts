import { describe, expect, test } from 'vitest';
import { beamMarksOf, besideEachOther } from './beam-marks.ts';

describe('the notches of a beam', () => {
  test('stand at each step, long and with a figure at each bag', () => {
    const marks = beamMarksOf({ step: 10, bag: 50, max: 200 });
    expect(marks).toHaveLength(21);
    expect(marks.filter(({ isBag }) => isBag).map(({ at }) => at)).toEqual([0, 50, 100, 150, 200]);
    expect(marks.filter(({ isNamed }) => isNamed).map(({ at }) => at)).toEqual([0, 50, 100, 150, 200]);
    expect(marks[1]).toEqual({ at: 10, isBag: false, isNamed: false });
  });

  test('leave the steps out where they would run together, and name every few bags', () => {
    const marks = beamMarksOf({ step: 1, bag: 25, max: 300 });
    expect(marks).toHaveLength(13);
    expect(marks.filter(({ isNamed }) => isNamed).map(({ at }) => at)).toEqual([0, 75, 150, 225, 300]);
  });
});

describe('the readings above a beam', () => {
  test('stand over their poises where there is room', () => {
    expect(besideEachOther([0.25, 0.5, 0.75])).toEqual([0.25, 0.5, 0.75]);
  });

  test.each([[[0, 0, 0]], [[1, 1, 1]], [[0.5, 0.5, 0.5]], [[0, 0.9, 0.95]]] as const)(
    'of %j never cover each other and never leave the beam',
    (places) => {
      const [first = 0, second = 0, third = 0] = besideEachOther(places);
      expect(first).toBeGreaterThanOrEqual(0);
      expect(second - first).toBeGreaterThanOrEqual(0.25);
      expect(third - second).toBeGreaterThanOrEqual(0.25);
      expect(third).toBeLessThanOrEqual(1);
    },
  );
});
