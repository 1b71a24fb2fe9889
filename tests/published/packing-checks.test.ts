import { CONTAINER_KINDS } from '@sheafbook/foods';
import {
  adviseLift,
  allowableStorage,
  bisectWindow,
  checkDue,
  closesKind,
  containersPerOneLost,
  humidityOverWheat,
  isClearedToRun,
  judgePours,
  liftingIndex,
  listSeamFaults,
  recommendedLimitGrams,
  recommendedLimitPounds,
  seamFaultsOf,
  seamOverlapMils,
  seamOverlapPercent,
  suspectWindow,
  unaccountedGrams,
  usedStorage,
  wheatMoisture,
} from '@sheafbook/packing';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

// Dairy inspection manual, double seams: overlap = cover hook + body hook + lid plate − width.
describe('a double seam', () => {
  const measures = {
    coverHookMils: 80,
    bodyHookMils: 80,
    widthMils: 125,
    thicknessMils: 55,
    countersinkMils: 125,
  };
  const plates = { lidPlateMils: 10, bodyPlateMils: 9 };

  test('hooks of 0.080, a plate of 0.010 and a width of 0.125 in lie 0.045 in over one another: 46.9 %', () => {
    expect(seamOverlapMils(measures, 10)).toBe(45);
    expect(seamOverlapPercent(measures, plates).toFixed(1)).toBe('46.9');
  });

  test('each measure outside the maker’s limits is named with what was found', () => {
    const limits = {
      ...plates,
      widthMils: { least: 110, most: 122 },
      thicknessMils: { least: 50, most: 60 },
      countersinkMils: { least: 120, most: 130 },
      overlapPercent: 45,
    };
    expect(listSeamFaults(measures, limits)).toEqual([
      { measure: 'width', found: 125, least: 110, most: 122 },
    ]);
    expect(listSeamFaults({ ...measures, widthMils: 120, coverHookMils: 60 }, limits)).toMatchObject([
      { measure: 'overlap', least: 45, most: null },
    ]);
  });

  test('a seam is wider than two plates of its lid and one of its body; what is read as less has no overlap', () => {
    const sheet = {
      ...{ widthLeast: 110, widthMost: 122, thicknessLeast: 50, thicknessMost: 60 },
      ...{ countersinkLeast: 120, countersinkMost: 130, overlapPercent: 45, lidPlate: 10, bodyPlate: 9 },
    };
    expect(seamFaultsOf({ ...measures, widthMils: 29 }, sheet)).toBeNull();
    expect(seamFaultsOf({ ...measures, widthMils: 30 }, sheet)).toMatchObject([
      { measure: 'width', found: 30 },
    ]);
    expect(seamFaultsOf(measures, sheet)).toEqual([{ measure: 'width', found: 125, least: 110, most: 122 }]);
  });
});

// Job map section 7.8.
describe('the suspect window', () => {
  const checks = [
    { serial: 1, passed: true },
    { serial: 150, passed: true },
    { serial: 230, passed: false },
  ];
  test('after a good check at 150 and a fault at 230 the 80 cans 151 to 230 are in doubt', () => {
    expect(suspectWindow(checks, 230)).toEqual({ fromSerial: 151, toSerial: 230 });
  });

  test('what no check stands behind is in doubt', () => {
    expect(suspectWindow([], 12)).toEqual({ fromSerial: 1, toSerial: 12 });
    expect(suspectWindow([{ serial: 12, passed: true }], 12)).toBeNull();
  });

  test('opening 190 and finding it good leaves 191 to 230', () => {
    const window = { fromSerial: 151, toSerial: 230 };
    expect(bisectWindow(window, []).nextToOpen).toBe(190);
    expect(bisectWindow(window, [{ serial: 190, passed: true }])).toEqual({
      suspects: { fromSerial: 191, toSerial: 230 },
      nextToOpen: 210,
      isDrift: true,
    });
    expect(bisectWindow(window, [{ serial: 190, passed: false }])).toEqual({
      suspects: window,
      nextToOpen: 170,
      isDrift: true,
    });
  });

  test('a good one after a bad one is a fault that comes and goes: halving ends, and each is tested', () => {
    const window = { fromSerial: 151, toSerial: 230 };
    const opened = [
      { serial: 190, passed: true },
      { serial: 160, passed: false },
      { serial: 155, passed: true },
    ];
    expect(bisectWindow(window, opened)).toEqual({
      suspects: { fromSerial: 156, toSerial: 230 },
      nextToOpen: null,
      isDrift: false,
    });
  });

  test('a seamer closes cans, a heat sealer pouches and liners, a hand what has a lid', () => {
    const closed = CONTAINER_KINDS.map(({ kindCode }) => [
      kindCode,
      (['can-seamer', 'heat-sealer', 'vacuum-sealer'] as const).filter((machine) =>
        closesKind(machine, kindCode),
      ),
    ]);
    expect(Object.fromEntries(closed)).toMatchObject({
      'can-no-10': ['can-seamer'],
      'pouch-1-gallon': ['heat-sealer', 'vacuum-sealer'],
      'pail-5-gallon-lined': ['heat-sealer'],
      'pail-5-gallon-bare': [],
      'jar-quart': ['vacuum-sealer'],
      'drum-55-gallon': [],
    });
    expect(closed.filter(([, machines]) => machines?.length === 3)).toEqual([]); // no listed kind is left to guessing
    expect(closesKind('can-seamer', 'a-kind-of-our-own')).toBe(true);
  });

  test('halving finds the first bad serial of any drift, and never clears a bad one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.nat(400), (size, offset) => {
        const window = { fromSerial: 1, toSerial: size };
        const firstBad = 1 + (offset % size);
        const opened: { serial: number; passed: boolean }[] = [];
        for (;;) {
          const { suspects, nextToOpen } = bisectWindow(window, opened);
          expect(suspects === null || suspects.fromSerial <= firstBad).toBe(true);
          if (nextToOpen === null) {
            expect(suspects).toEqual({ fromSerial: firstBad, toSerial: size });
            return;
          }
          opened.push({ serial: nextToOpen, passed: nextToOpen < firstBad });
        }
      }),
    );
  });

  test('a machine runs again after three good ones in a row', () => {
    const good = (serial: number) => ({ serial, passed: true });
    expect(isClearedToRun([good(231), good(232)])).toBe(false);
    expect(isClearedToRun([good(231), { serial: 232, passed: false }, good(233), good(234)])).toBe(false);
    expect(isClearedToRun([good(231), good(232), good(233)])).toBe(true);
  });

  test('the next teardown is due at 150 cans or an hour, whichever is first', () => {
    expect(checkDue({ containers: 80, minutes: 32 })).toEqual({
      containersLeft: 70,
      minutesLeft: 28,
      isDue: false,
    });
    expect(checkDue({ containers: 150, minutes: 32 }).isDue).toBe(true);
    expect(checkDue({ containers: 20, minutes: 60 }).isDue).toBe(true);
    expect(checkDue(null).isDue).toBe(true);
  });
});

// Job map section 7.7, target 2,600 g in a run of 50.
describe('over-pouring', () => {
  const judged = judgePours([2610, 2595, 2640, 2655, 2602, 2700], { targetGrams: 2600, plannedUnits: 50 });
  test('the excess runs 10, 5, 45, 100, 102, 202', () => {
    expect(judged.map(({ excessGrams }) => excessGrams)).toEqual([10, 5, 45, 100, 102, 202]);
  });
  // Single: pours 4 (+55) and 6 (+100). Mean of five: +20.4 at pour 5 and +38.4 at pour 6. Shortage at pour 6:
  // 202/6 × 44 = 1,481 g > 1,300; at pour 5 it is 102/5 × 45 = 918 g, at pour 4 100/4 × 46 = 1,150 g.
  test('alarms at pours 4, 5 and 6', () => {
    expect(judged.map(({ alarms }) => alarms)).toEqual([
      [],
      [],
      [],
      ['single'],
      ['mean'],
      ['single', 'mean', 'shortage'],
    ]);
  });
  test('30 g too much give one can away every 86', () => {
    expect(containersPerOneLost(2600, 30)).toBe(86);
    expect(containersPerOneLost(2600, 0)).toBeNull();
  });
});

// DHHS (NIOSH) 94-110, worked in inches and pounds: HM .6667, VM .82, DM .88, FM .94, CM .95.
describe('lifting a pail of 45 lb', () => {
  const often = { twistDegrees: 0, liftsPerMinute: 1, duration: 'up-to-1-hour' } as const;
  test('from the floor at arm’s length is twice what is recommended', () => {
    const limit = recommendedLimitPounds({ reach: 15, height: 6, travel: 30, coupling: 'fair', ...often });
    expect(limit.toFixed(2)).toBe('21.91');
    expect(liftingIndex(45, limit).toFixed(2)).toBe('2.05');
  });
  test('held close at bench height it is close to what is recommended', () => {
    const limit = recommendedLimitPounds({ reach: 12, height: 30, travel: 10, coupling: 'good', ...often });
    expect(limit.toFixed(2)).toBe('39.95');
    expect(liftingIndex(45, limit).toFixed(2)).toBe('1.13');
  });
  test('in centimetres the same lift comes out within 3 % of it', () => {
    const grams = recommendedLimitGrams({
      reach: 38.1,
      height: 15.24,
      travel: 76.2,
      coupling: 'fair',
      ...often,
    });
    expect(Math.abs(grams / 453.59237 / 21.91 - 1)).toBeLessThan(0.03);
  });
  test('a 50 lb bag and a 45 lb pail are for two, 25 lb packs for one who holds them close, 20 lb for one anywhere', () => {
    const pounds = [50, 45, 25, 20].map((one) => adviseLift(Math.round(one * 453.59237)));
    expect(pounds).toEqual(['two', 'two', 'one-held-close', 'one']);
  });
  test('out of reach nobody should lift at all', () => {
    const limit = recommendedLimitPounds({ reach: 26, height: 30, travel: 10, coupling: 'good', ...often });
    expect(liftingIndex(1, limit)).toBe(Number.POSITIVE_INFINITY);
  });
});

// Modified Chung–Pfost, ASAE D245, hard wheat.
describe('moisture of wheat', () => {
  test.for([
    [20, [9.38, 10.64, 11.89, 13.21, 13.94, 14.72, 16.62, 19.48], [30, 40, 50, 60, 65, 70, 80, 90]],
    [10, [12.55, 13.86, 15.34, 17.21, 20.03], [50, 60, 70, 80, 90]],
    [30, [11.3, 12.65, 14.17, 16.09, 18.99], [50, 60, 70, 80, 90]],
  ] as const)('at %d °C', ([celsius, moistures, humidities]) => {
    const found = humidities.map((humidity) => {
      return Number(wheatMoisture(celsius, humidity / 100).wetBasisPercent.toFixed(2));
    });
    expect(found).toEqual(moistures);
  });
  test('dry basis beside it', () => {
    expect(wheatMoisture(20, 0.5).dryBasisPercent.toFixed(2)).toBe('13.49');
    expect(wheatMoisture(20, 0.9).dryBasisPercent.toFixed(2)).toBe('24.19');
  });
  test.for([
    [20, [8, 10, 12, 13, 13.5, 14], [19.9, 34.9, 50.9, 58.5, 62.0, 65.4]],
    [30, [8, 10, 12, 13, 13.5, 14], [24.3, 39.7, 55.3, 62.5, 65.8, 68.9]],
  ] as const)('the air over wheat at %d °C', ([celsius, moistures, humidities]) => {
    const found = moistures.map((moisture) =>
      Number((100 * humidityOverWheat(celsius, moisture)).toFixed(1)),
    );
    expect(found).toEqual(humidities);
  });
});

// NDSU Extension, allowable storage time; its news release of 12 October 2009 gives 70, 120 and 230 days at 16 %.
describe('how long damp grain may lie', () => {
  test.for([
    [16, 70, 70],
    [16, 60, 120],
    [16, 50, 230],
    [24, 40, 40],
    [20, 80, 7],
  ] as const)('%d %% at %d °F: %d days', ([moisture, fahrenheit, days]) => {
    expect(allowableStorage(moisture, fahrenheit)).toEqual({ days, isMoreThan: false });
  });
  test('between rows the damper counts, and below 14 % the table is silent', () => {
    expect(allowableStorage(15.5, 65)).toEqual(allowableStorage(16, 70));
    expect(allowableStorage(13.5, 70)).toBeNull();
    expect(allowableStorage(14, 40)).toEqual({ days: 300, isMoreThan: true });
  });
  test('35 days at 70 °F and 60 at 60 °F use up 16 % wheat; after the first 115 are left at 50 °F', () => {
    const first = { days: 35, wetBasisPercent: 16, fahrenheit: 70 };
    const then = { days: 60, wetBasisPercent: 16, fahrenheit: 60 };
    expect(usedStorage([first, then])).toBe(1);
    const left = (1 - usedStorage([first])) * (allowableStorage(16, 50)?.days ?? 0);
    expect(left).toBe(115);
  });
});

test('the grams of a session that nobody can account for', () => {
  const mass = {
    broughtGrams: 45_360,
    inContainersGrams: 41_600,
    leftInBagsGrams: 3_500,
    spilledGrams: 200,
    sampledGrams: 60,
  };
  expect(unaccountedGrams(mass)).toBe(0);
  expect(unaccountedGrams({ ...mass, spilledGrams: 0 })).toBe(200);
});
