import {
  type AgeingRule,
  ageingRate,
  daysLostAgainst,
  gainFromMoving,
  type KeptContainer,
  keepingLifeOf,
  nearDateOf,
  OUTCOMES,
  type Outcome,
  PUBLISHED_AGEING,
  remainingDays,
  type Stretch,
  threeDates,
  usedDays,
} from '@sheafbook/keeping';
import { addDays, tenthsCelsiusFromFahrenheit } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const exactTenths = (fahrenheit: number) => (fahrenheit - 32) / 0.18;

// USDA Agriculture Handbook 506: life doubles for each 10 °F cooler and halves for each 10 °F hotter.
describe('life over warmth', () => {
  test.for([
    [60, 60],
    [70, 30],
    [80, 15],
    [90, 7.5],
    [100, 3.75],
    [105, 2.65],
  ] as const)('30 years at 70 °F are at %d °F: %d', ([fahrenheit, years]) => {
    const left = remainingDays({ lifeDays: 30, usedDays: 0 }, exactTenths(fahrenheit));
    expect(Number(left.toFixed(2))).toBe(years);
  });

  test('at 50 °F the sum says 120 years, and the cap of the band 30', () => {
    const fifty = exactTenths(50);
    expect(remainingDays({ lifeDays: 30, usedDays: 0 }, fifty)).toBeCloseTo(120, 6);
    expect(remainingDays({ lifeDays: 30, usedDays: 0, capDays: 30 }, fifty)).toBe(30);
  });

  const year = (parts: readonly (readonly [days: number, fahrenheit: number])[]): Stretch[] =>
    parts.map(([days, fahrenheit]) => ({ days, tenthsCelsius: exactTenths(fahrenheit), known: 'read' }));

  test.for([
    {
      parts: [
        [6, 60],
        [6, 80],
      ],
      rate: 1.25,
      years: 24.0,
    },
    {
      parts: [
        [9, 65],
        [3, 95],
      ],
      rate: 1.9445,
      years: 15.43,
    },
  ] as const)('a varying store adds up: $rate of a year a year', ({ parts, rate, years }) => {
    const used = usedDays(year(parts)) / 12;
    expect(Number(used.toFixed(4))).toBe(rate);
    expect(Number((30 / used).toFixed(2))).toBe(years);
  });

  test('below 5 °C cold earns nothing more', () => {
    expect(ageingRate(-200)).toBe(ageingRate(50));
  });
});

// Job map 10.2: a base life of 3,650 days at 15 °C that halves for each 10 °C.
describe('the job’s own starter rule', () => {
  const rule: AgeingRule = { referenceTenths: 150, doublesOverTenths: 100, coldestTenths: 50 };
  const at = (days: number, celsius: number): Stretch => ({
    days,
    tenthsCelsius: celsius * 10,
    known: 'read',
  });

  test('850 days with two hot summers use up 1,062', () => {
    const history = [at(365, 15), at(92, 25), at(273, 15), at(120, 25)];
    const used = usedDays(history, rule);
    expect(used).toBe(1062);
    const life = { lifeDays: 3650, usedDays: used };
    expect(remainingDays(life, 150, rule)).toBe(2588);
    expect(remainingDays(life, 250, rule)).toBe(1294);
    expect(addDays('2026-06-29', 1294)).toBe('2030-01-13');
  });

  test.for([
    [365, 18, 449.37],
    [92, 27, 211.36],
  ] as const)('%d days at %d °C use up %d', ([days, celsius, used]) => {
    expect(Number(usedDays([at(days, celsius)], rule).toFixed(2))).toBe(used);
  });
});

const canOfWheat: KeptContainer = {
  keepingClass: 'whole-grain-hard',
  barrier: 'metal',
  isDark: true,
  treatment: 'oxygen-absorber',
  moisturePercent: 9.5,
  standsInLight: false,
  openedDaysAgo: null,
  lastLook: null,
  history: [],
  nowTenthsCelsius: 211,
};
const years = (days: number) => Math.round(days / 365.25);

describe('what a container has left', () => {
  // A university survey of canned wheat (facpub/32) and the list of a welfare service: 30 years; other rows by their marks.
  test.for([
    { what: 'a can of wheat', kept: {}, least: 30, most: 30 },
    { what: 'a lined pail of wheat', kept: { barrier: 'foil' }, least: 20, most: 25 },
    {
      what: 'a bare pail with dry ice',
      kept: { barrier: 'bare-plastic', treatment: 'dry-ice' },
      least: 2,
      most: 5,
    },
    { what: 'a can of dry milk', kept: { keepingClass: 'dry-milk' }, least: 20, most: 20 },
    { what: 'a can of oil', kept: { keepingClass: 'oil', treatment: 'none' }, least: 1, most: 2 },
    // Up to 5 years in a bottle; wheat, corn and dry beans longer, which nobody has put a figure to.
    { what: 'a bottle of rice', kept: { barrier: 'pet', keepingClass: 'white-rice' }, least: 5, most: 5 },
    { what: 'a bottle of wheat', kept: { barrier: 'pet' }, least: 5, most: 10 },
  ] as const)('$what', ({ kept, least, most }) => {
    const life = keepingLifeOf({ ...canOfWheat, ...kept });
    expect([years(life.lowDays), years(life.highDays)]).toEqual([least, most]);
  });

  test('a hot garage loses most of the life of a cool basement', () => {
    const garage = keepingLifeOf({ ...canOfWheat, nowTenthsCelsius: tenthsCelsiusFromFahrenheit(105) });
    const basement = keepingLifeOf({ ...canOfWheat, nowTenthsCelsius: tenthsCelsiusFromFahrenheit(55) });
    expect(years(garage.likelyDays)).toBe(3);
    expect(years(basement.likelyDays)).toBe(30);
    expect(gainFromMoving({ ...canOfWheat, nowTenthsCelsius: 406 }, 128)).toBeGreaterThan(9000);
  });

  test('damp halves it for each per cent above 10', () => {
    const dry = keepingLifeOf(canOfWheat);
    const damp = keepingLifeOf({ ...canOfWheat, moisturePercent: 12 });
    expect(Math.abs(damp.likelyDays - dry.likelyDays / 4)).toBeLessThan(2);
    expect(damp.reasons).toContain('moisture');
  });

  test('what nobody knows takes the cautious case and says so', () => {
    const gift: KeptContainer = {
      ...canOfWheat,
      history: [{ days: 2000, tenthsCelsius: 250, known: 'unknown' }],
    };
    const known: KeptContainer = { ...gift, history: [{ days: 2000, tenthsCelsius: 250, known: 'read' }] };
    expect(keepingLifeOf(gift).reasons).toContain('unknown-history');
    expect(keepingLifeOf(gift).isEstimate).toBe(true);
    // Nobody can say that it stood warm; it is taken so.
    expect(keepingLifeOf(gift).reasons).not.toContain('warm-past');
    expect(keepingLifeOf(known).reasons).toContain('warm-past');
    expect(keepingLifeOf({ ...gift, treatment: null }).likelyDays).toBeLessThan(
      keepingLifeOf(known).likelyDays,
    );
  });

  test('an opened can of milk keeps 30 days, and after them none', () => {
    const milk = { ...canOfWheat, keepingClass: 'dry-milk' } as const;
    expect(keepingLifeOf({ ...milk, openedDaysAgo: 0 }).likelyDays).toBe(30);
    expect(keepingLifeOf({ ...milk, openedDaysAgo: 40 }).likelyDays).toBe(0);
  });

  test('what a look left for the kitchen has 30 days from then, and what people may not eat has none', () => {
    const after = (outcome: Outcome, daysAgo: number) =>
      keepingLifeOf({ ...canOfWheat, lastLook: { outcome, daysAgo } });
    expect(after('table', 10)).toEqual(keepingLifeOf(canOfWheat));
    for (const outcome of ['kitchen-soon', 'freeze-and-repack'] as const) {
      const { reasons, isEstimate, ...soon } = after(outcome, 10);
      expect(soon).toMatchObject({ lowDays: 20, likelyDays: 20, highDays: 20, pastDays: 0 });
      expect([reasons.includes('found-soon'), isEstimate]).toEqual([true, true]);
      expect(after(outcome, 45)).toMatchObject({ likelyDays: 0, pastDays: 15 });
    }
    for (const outcome of ['animals', 'compost', 'discard'] as const) {
      const { reasons, ...unfit } = after(outcome, 10);
      expect(unfit).toMatchObject({ highDays: 0, pastDays: 10 });
      expect(reasons).toContain('found-unfit');
    }
  });

  test('no look lengthens a life, and a worse one never leaves more', () => {
    const history = fc.record({ days: fc.nat(14_000), tenthsCelsius: fc.integer({ min: -200, max: 450 }) });
    fc.assert(
      fc.property(history, fc.nat(60), (past, daysAgo) => {
        const kept = { ...canOfWheat, history: [{ ...past, known: 'read' as const }] };
        const lives = OUTCOMES.map((outcome) => keepingLifeOf({ ...kept, lastLook: { outcome, daysAgo } }));
        for (const days of ['lowDays', 'likelyDays', 'highDays'] as const) {
          expect(lives[0]?.[days]).toBe(keepingLifeOf(kept)[days]);
          for (const [at, life] of lives.entries())
            expect(life[days]).toBeLessThanOrEqual(lives[at - 1]?.[days] ?? life[days]);
        }
      }),
    );
  });

  test('what is past its day says for how long, and its date stays the same day by day', () => {
    // Oil in a can keeps two years at 70 °F: after three there it is a year past; at 80 °F it keeps one, and is two past.
    const oil: KeptContainer = { ...canOfWheat, keepingClass: 'oil', treatment: 'none' };
    const { referenceTenths, doublesOverTenths } = PUBLISHED_AGEING;
    const after = (days: number, tenthsCelsius: number) =>
      keepingLifeOf({ ...oil, history: [{ days, tenthsCelsius, known: 'read' }] });
    expect(after(1_096, referenceTenths).pastDays).toBe(366); // 1,096 less 730.5, a begun day counts
    expect(after(1_096, referenceTenths + doublesOverTenths).pastDays).toBe(731); // less 365.25
    expect(after(1_096, referenceTenths).usedPart).toBe(1);
    expect(after(700, referenceTenths).pastDays).toBe(0);
    const warmth = fc.integer({ min: -100, max: 400 });
    fc.assert(
      fc.property(
        fc.nat(3_000),
        warmth,
        fc.integer({ min: 1, max: 400 }),
        warmth,
        (days, then, more, since) => {
          const read = { known: 'read' } as const;
          const past: Stretch[] = [
            { days: 1_500, tenthsCelsius: 250, ...read },
            { days, tenthsCelsius: then, ...read },
          ];
          const before = keepingLifeOf({ ...oil, history: past });
          const later = keepingLifeOf({
            ...{ ...oil, nowTenthsCelsius: since },
            history: [...past, { days: more, tenthsCelsius: since, ...read }],
          });
          expect([before.likelyDays, later.likelyDays]).toEqual([0, 0]);
          expect(later.pastDays).toBe(before.pastDays + more);
          const on = (todayOn: string, { pastDays }: { pastDays: number }) =>
            threeDates({ todayOn, remainingDays: 0, pastDays, pantries: [] });
          expect(on(addDays('2026-11-28', more), later)).toEqual(on('2026-11-28', before));
        },
      ),
    );
  });

  test('warmer never keeps longer, and the band keeps its order', () => {
    const tenths = fc.integer({ min: -200, max: 450 });
    fc.assert(
      fc.property(tenths, tenths, fc.nat(9000), (a, b, days) => {
        const history: Stretch[] = [{ days, tenthsCelsius: a, known: 'read' }];
        const cool = keepingLifeOf({ ...canOfWheat, history, nowTenthsCelsius: Math.min(a, b) });
        const warm = keepingLifeOf({ ...canOfWheat, history, nowTenthsCelsius: Math.max(a, b) });
        expect(warm.likelyDays).toBeLessThanOrEqual(cool.likelyDays);
        expect(warm.lowDays).toBeLessThanOrEqual(warm.likelyDays);
        expect(warm.likelyDays).toBeLessThanOrEqual(warm.highDays);
      }),
    );
  });

  test('no longer and no warmer past ever lengthens a life', () => {
    const stretch = fc.record({ days: fc.nat(2000), tenthsCelsius: fc.integer({ min: -200, max: 450 }) });
    const read = (parts: readonly { days: number; tenthsCelsius: number }[]): Stretch[] =>
      parts.map((part) => ({ ...part, known: 'read' }));
    fc.assert(
      fc.property(fc.array(stretch, { maxLength: 5 }), stretch, fc.nat(200), (past, more, warmer) => {
        const before = keepingLifeOf({ ...canOfWheat, history: read(past) });
        const longer = keepingLifeOf({ ...canOfWheat, history: read([...past, more]) });
        const hotter = keepingLifeOf({
          ...canOfWheat,
          history: read(past.map((part) => ({ ...part, tenthsCelsius: part.tenthsCelsius + warmer }))),
        });
        for (const days of ['lowDays', 'likelyDays', 'highDays'] as const) {
          expect(longer[days]).toBeLessThanOrEqual(before[days]);
          expect(hotter[days]).toBeLessThanOrEqual(before[days]);
        }
      }),
    );
  });

  test('the word of whoever kept it counts as it was said, and is said to be a word', () => {
    const told: KeptContainer = {
      ...canOfWheat,
      history: [{ days: 2000, tenthsCelsius: 180, known: 'told' }],
    };
    const read: KeptContainer = { ...told, history: [{ days: 2000, tenthsCelsius: 180, known: 'read' }] };
    expect(keepingLifeOf(told)).toMatchObject({
      likelyDays: keepingLifeOf(read).likelyDays,
      isEstimate: true,
    });
    expect(keepingLifeOf(told).reasons).toContain('told-history');
  });

  test('a summer in the garage is told in days lost', () => {
    const summer: Stretch[] = [{ days: 92, tenthsCelsius: exactTenths(90), known: 'read' }];
    const lost = daysLostAgainst(summer, exactTenths(60), PUBLISHED_AGEING);
    expect(Math.round(lost)).toBe(322); // 92 × 2² − 92 × 2⁻¹
  });
});

// Job map 10.3: 2027-07-02 is a Friday; the pantry opens Tuesdays and Thursdays.
describe('the three dates', () => {
  const pantry = { leastLifeDays: 90, transportDays: 0, openWeekdays: [2, 4] };
  const eatFirst = { todayOn: '2026-09-30', remainingDays: 365 };

  test('eat-first 30 September 2027 closes for gifts on 1 July and is offered from 2 May', () => {
    expect(threeDates({ ...eatFirst, pantries: [pantry] })).toEqual({
      eatFirstOn: '2027-09-30',
      giftClosesOn: '2027-07-01',
      offerOn: '2027-05-02',
    });
  });

  test('without a pantry there is no last day for gifts, and the offer begins 90 days before the end', () => {
    expect(threeDates({ ...eatFirst, pantries: [{ ...pantry, openWeekdays: [] }] })).toEqual({
      eatFirstOn: '2027-09-30',
      giftClosesOn: null,
      offerOn: '2027-07-02',
    });
  });

  test('a group may offer sooner or later than is common practice', () => {
    const own = { ...eatFirst, offerDays: 30, offerDaysWithoutPantry: 120 };
    expect(threeDates({ ...own, pantries: [pantry] }).offerOn).toBe('2027-06-01'); // 30 days before 1 July
    expect(threeDates({ ...own, pantries: [] }).offerOn).toBe('2027-06-02'); // 120 days before 30 September
  });

  // With a window of 20 days and a margin of 30 over the dates of job map 10.3.
  test.for([
    ['2027-04-11', null],
    ['2027-04-12', 'offer'],
    ['2027-05-02', 'offer'],
    ['2027-05-03', null],
    ['2027-06-11', 'gift-closes'],
    ['2027-07-01', 'gift-closes'],
    ['2027-07-02', null],
    ['2027-08-30', null],
    ['2027-08-31', 'eat-first'],
    ['2028-01-01', 'eat-first'],
  ] as const)('on %s what is near is %s', ([todayOn, near]) => {
    const dates = threeDates({ ...eatFirst, pantries: [pantry] });
    expect(nearDateOf(dates, { todayOn, giftWindowDays: 20, eatFirstMarginDays: 30 })).toBe(near);
  });

  test('offer ≤ gift-closes ≤ eat-first, whatever the terms', () => {
    const terms = fc.record({
      leastLifeDays: fc.nat(400),
      transportDays: fc.nat(7),
      openWeekdays: fc.subarray([0, 1, 2, 3, 4, 5, 6]),
    });
    fc.assert(
      fc.property(
        fc.nat(9000),
        fc.array(terms, { maxLength: 3 }),
        fc.nat(200),
        (days, pantries, offerDays) => {
          const dates = threeDates({ todayOn: '2026-11-28', remainingDays: days, pantries, offerDays });
          expect(dates.offerOn <= dates.eatFirstOn).toBe(true);
          if (dates.giftClosesOn === null) return;
          expect(dates.offerOn <= dates.giftClosesOn).toBe(true);
          expect(dates.giftClosesOn <= dates.eatFirstOn).toBe(true);
        },
      ),
    );
  });
});
