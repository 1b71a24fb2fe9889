import {
  hotSeasons,
  type KeptContainer,
  keepingLifeOf,
  type Stretch,
  warmSeasonOf,
  whatHelps,
} from '@sheafbook/keeping';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

// A gasket pail of wheat in a garage: bare plastic passes oxygen, so that no absorber helps in it (a published pail leaflet).
const pail: KeptContainer = {
  keepingClass: 'whole-grain-hard',
  barrier: 'bare-plastic',
  isDark: true,
  treatment: 'none',
  moisturePercent: 9.5,
  standsInLight: false,
  openedDaysAgo: null,
  lastLook: null,
  history: [],
  nowTenthsCelsius: 300,
};
const pack = { grams: 15_000, needsMoistureTest: true };
const cellar = { placeId: 'cellar', tenthsCelsius: 120, isLit: false };
const attic = { placeId: 'attic', tenthsCelsius: 350, isLit: false };

describe('what would make a container keep longer', () => {
  test('a can with an absorber does more for a pail than the cellar does, the attic nothing', () => {
    // 3 years at 70 °F are 361 days at 30 °C (÷ 2^1.6); in the cellar the band itself, 1,095; a can's 30 years there 3,614.
    expect(whatHelps(pail, pack, [cellar, attic])).toEqual([
      { way: 'repack-in-can', gainDays: 3614 - 361 },
      { way: 'move', placeId: 'cellar', gainDays: 1095 - 361 },
    ]);
  });

  test('the wall it stands in is kept where an absorber suits it', () => {
    const foil = { ...pail, barrier: 'foil' } as const;
    expect(whatHelps(foil, pack, []).map(({ way }) => way)).toEqual(['repack-in-can', 'repack']);
  });

  test.for([
    { because: 'it is opened', change: { openedDaysAgo: 3 } },
    {
      because: 'a look left it for the kitchen',
      change: { lastLook: { outcome: 'kitchen-soon', daysAgo: 3 } },
    },
    { because: 'it is too moist', change: { moisturePercent: 11 } },
    { because: 'it is sugar, which sets hard', change: { keepingClass: 'sugar' } },
    { because: 'it is fat', change: { keepingClass: 'oily-legume' } },
  ] as const)('nobody is told to pack it anew when $because', ({ change }) => {
    expect(whatHelps({ ...pail, ...change }, pack, [])).toEqual([]);
  });

  test('whatever is named adds what it says, the most first', () => {
    const place = fc.record({
      placeId: fc.uuid(),
      tenthsCelsius: fc.integer({ min: -100, max: 400 }),
      isLit: fc.constant(false),
    });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 4 }), fc.integer({ min: 0, max: 400 }), (places, now) => {
        const kept = { ...pail, nowTenthsCelsius: now };
        const helps = whatHelps(kept, pack, places);
        const gains = helps.map(({ gainDays }) => gainDays);
        expect(gains).toEqual(gains.toSorted((a, b) => b - a));
        const { likelyDays } = keepingLifeOf(kept);
        for (const help of helps) {
          expect(help.gainDays).toBeGreaterThan(0);
          if (help.way !== 'move') continue;
          const there = places.find(({ placeId }) => placeId === help.placeId);
          const after = keepingLifeOf({ ...kept, nowTenthsCelsius: there?.tenthsCelsius ?? 0 });
          expect(after.likelyDays - likelyDays).toBe(help.gainDays);
        }
      }),
    );
  });
});

describe('the warm season of a year', () => {
  const read = (days: number, tenthsCelsius: number): Stretch => ({ days, tenthsCelsius, known: 'read' });

  test('are its warmest 92 days in a row, wherever they begin', () => {
    // 70 °F is 21.11 °C: 26.7 °C, a hair over 80 °F, ages 2.008 times as fast, and 15.6 °C half as fast.
    const season = warmSeasonOf([read(150, 156), read(92, 267), read(123, 156)], 92);
    expect([season.startsAfterDays, season.days]).toEqual([150, 92]);
    expect(season.usedDays).toBeCloseTo(92 * 2.0083, 1);
    expect(warmSeasonOf([read(10, 211)], 92)).toMatchObject({ startsAfterDays: 0, days: 10 });
  });

  test('no other span of the year is warmer', () => {
    const part = fc.record({ days: fc.integer({ min: 1, max: 40 }), tenthsCelsius: fc.nat(400) });
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 60 }),
        (parts, days) => {
          const history = parts.map((one) => read(one.days, one.tenthsCelsius));
          const season = warmSeasonOf(history, days);
          const byDay = parts.flatMap((one) => Array.from({ length: one.days }, () => one.tenthsCelsius));
          const usedFrom = (start: number) =>
            byDay
              .slice(start, start + season.days)
              .reduce((sum, tenths) => sum + 2 ** ((Math.max(50, tenths) - 38 / 0.18) / (10 / 0.18)), 0);
          const all = byDay.slice(0, byDay.length - season.days + 1).map((_, start) => usedFrom(start));
          expect(season.usedDays).toBeCloseTo(Math.max(...all), 6);
          expect(usedFrom(season.startsAfterDays)).toBeCloseTo(season.usedDays, 6);
        },
      ),
    );
  });
});

describe('what the last summer cost', () => {
  const read = (days: number, tenthsCelsius: number): Stretch => ({ days, tenthsCelsius, known: 'read' });
  const [at60, at70, at90] = [60, 70, 90].map((fahrenheit) => (fahrenheit - 32) / 0.18) as [
    number,
    number,
    number,
  ];
  const garage = { placeId: 'garage', history: [read(150, at70), read(92, at90), read(123, at70)] };
  const cellar = { placeId: 'cellar', history: [read(365, at60)] };
  const room = { placeId: 'room', history: [read(365, at70)] };
  const attic = {
    placeId: 'attic',
    history: [{ days: 365, tenthsCelsius: 250, known: 'unknown' as const }],
  };

  test('92 days at 90 °F age as 368 at 70 °F, the same at 60 °F as 46: a garage loses 322 against the cellar', () => {
    const [warm, guessed, ...others] = hotSeasons([attic, cellar, room, garage]);
    expect(guessed).toMatchObject({ placeId: 'attic', coolerPlaceId: 'cellar', isMeasured: false });
    expect(warm).toMatchObject({ placeId: 'garage', coolerPlaceId: 'cellar', isMeasured: true });
    expect([warm?.startsAfterDays, warm?.days]).toEqual([150, 92]);
    expect(warm?.usedDays).toBeCloseTo(368, 6); // 92 × 2²
    expect(warm?.lostDays).toBeCloseTo(322, 6); // less 92 × 2⁻¹
    expect(others.map(({ placeId, lostDays }) => [placeId, Math.round(lostDays)])).toEqual([
      ['room', 46], // 92 − 46
      ['cellar', 0],
    ]);
  });

  test('nobody is sent to a place that was not read through that season, nor to a warmer one', () => {
    const late = {
      placeId: 'late',
      history: [{ ...read(200, at60), known: 'unknown' as const }, read(165, at60)],
    };
    expect(hotSeasons([garage, late, attic])).toContainEqual(
      expect.objectContaining({ placeId: 'garage', coolerPlaceId: null, lostDays: 0 }),
    );
    expect(hotSeasons([])).toEqual([]);
  });
});
