import {
  CAN_LINE,
  chanceOfAtLeast,
  changeoverMinutes,
  daySeconds,
  expectedComing,
  type FoodRun,
  morePeopleToAsk,
  orderFoods,
  placeCrew,
  planOpenPack,
  planSupply,
  runStarts,
  SCRAP_PERCENT,
  settleSession,
  shownMinutes,
  showRate,
  slotCapacity,
  unitsPerHour,
  workContentSeconds,
} from '@sheafbook/packing';
import { fraction, fractionToNumber } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

// The worked numbers of the trade's job map, sections 7.1 to 7.5; all exact.
describe('a crew on a can line', () => {
  test('a can is 108 seconds of work', () => {
    expect(workContentSeconds(CAN_LINE)).toBe(108);
  });

  test.for([
    { people: 4, cycles: [27, 24, 30], crew: [2, 1, 1], cycle: 30, hourly: 120, idle: 0 },
    { people: 5, cycles: [27, 24, 15], crew: [2, 1, 2], cycle: 27, hourly: 133.3, idle: 0 },
    { people: 6, cycles: [18, 24, 15], crew: [3, 1, 2], cycle: 24, hourly: 150, idle: 0 },
    { people: 8, cycles: [18, 24, 15], crew: [3, 1, 2], cycle: 24, hourly: 150, idle: 2 },
  ])('$people people', ({ people, cycles, crew, cycle, hourly, idle }) => {
    const placed = placeCrew(CAN_LINE, people);
    expect(placed?.blocks.map((block) => fractionToNumber(block.cycleSeconds))).toEqual(cycles);
    expect(placed?.blocks.map((block) => block.people)).toEqual(crew);
    expect(placed?.cycleSeconds).toEqual(fraction(cycle));
    expect(unitsPerHour(fraction(cycle))).toBe(hourly);
    expect(placed?.idlePeople).toBe(idle);
  });

  test('the bottleneck moves from the labels to the filling to the seamer', () => {
    const bottleneckOf = (people: number) => placeCrew(CAN_LINE, people)?.bottleneck.stations;
    expect(bottleneckOf(4)).toEqual(['label', 'box']);
    expect(bottleneckOf(5)).toEqual(['fill', 'weigh', 'absorber']);
    expect(bottleneckOf(6)).toEqual(['seam']);
  });

  test('two people can not run three blocks', () => {
    expect(placeCrew(CAN_LINE, 2)).toBeNull();
  });

  test('228 cans by six people from 09:00 end at 12:31:12, shown as 12:35', () => {
    const day = { setupMinutes: 30, changeoverMinutes: 30, breakMinutes: 15, cleanDownMinutes: 45 };
    const seconds = daySeconds(228, fraction(24), day);
    expect(seconds).toBe(3 * 3600 + 31 * 60 + 12);
    expect(shownMinutes(seconds)).toBe(3 * 60 + 35);
  });

  test('a slot holds what its minutes leave', () => {
    const day = { setupMinutes: 30, changeoverMinutes: 30, breakMinutes: 15, cleanDownMinutes: 45 };
    expect(slotCapacity(212, fraction(24), day)).toBe(230); // 92 min × 60 / 24
    expect(slotCapacity(211, fraction(24), day)).toBe(227);
    expect(slotCapacity(100, fraction(24), day)).toBe(0);
  });

  test('runs start one after the other', () => {
    const runs = [
      { units: 36, changeoverMinutes: 0 },
      { units: 48, changeoverMinutes: 5 },
    ];
    expect(runStarts(runs, fraction(24), 30)).toEqual([
      { startsAtSecond: 1800, endsAtSecond: 2664, waitSeconds: 0 }, // 36 × 24 s
      { startsAtSecond: 2964, endsAtSecond: 4116, waitSeconds: 0 },
    ]);
  });
});

function permutations<Item>(items: readonly Item[]): Item[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item, at) => permutations(items.toSpliced(at, 1)).map((rest) => [item, ...rest]));
}

describe('the order of foods', () => {
  const food = (foodCode: string, units: number, carries: readonly string[]): FoodRun => {
    return { foodCode, units, carries, mustNotMeet: [] };
  };
  const beans = food('beans', 36, []);
  const rice = food('rice', 48, []);
  const wheat = food('wheat', 120, ['wheat']);
  const soy = food('soy', 24, ['soy']);

  test('four foods take 30 minutes of changing over', () => {
    const order = orderFoods([wheat, soy, rice, beans]);
    expect(order).toMatchObject({ isPossible: true, totalMinutes: 30, changeovers: [0, 5, 5, 20] });
    expect(order.isPossible && order.order.map((run) => run.foodCode)).toEqual([
      'beans',
      'rice',
      'soy',
      'wheat',
    ]);
  });

  test('of their 24 orders 12 take those 30 minutes, and the worst takes 45', () => {
    const minutes = permutations([wheat, soy, rice, beans]).map((order) =>
      order.slice(1).reduce((sum, run, at) => sum + changeoverMinutes(order[at] ?? run, run), 0),
    );
    expect(minutes).toHaveLength(24);
    expect(minutes.filter((one) => one === 30)).toHaveLength(12);
    expect([Math.min(...minutes), Math.max(...minutes)]).toEqual([30, 45]);
    const worst = [wheat, soy, rice, beans];
    const of = worst.slice(1).map((run, at) => changeoverMinutes(worst[at] ?? run, run));
    expect(of.reduce((sum, one) => sum + one, 0)).toBe(45);
  });

  test('a food for somebody with an allergy runs before the allergen, at a cost', () => {
    const order = orderFoods([{ ...wheat, mustNotMeet: ['soy'] }, soy, rice, beans]);
    const codes = order.isPossible ? order.order.map((run) => run.foodCode) : [];
    expect(codes.indexOf('wheat')).toBeLessThan(codes.indexOf('soy'));
  });

  test('two foods that must each come first have no order', () => {
    const runs = [
      { ...wheat, mustNotMeet: ['soy'] },
      { ...soy, mustNotMeet: ['wheat'] },
    ];
    expect(orderFoods(runs)).toMatchObject({ isPossible: false });
  });
});

describe('who comes', () => {
  const records = [
    [9, 10],
    [5, 8],
    [0, 0],
    [3, 3],
    [7, 10],
    [2, 4],
    [6, 6],
    [1, 2],
  ].map(([shows = 0, signed = 0]) => ({ shows, signed }));

  test('each leans on four of five until they have a record', () => {
    expect(records.map(showRate)).toEqual([
      fraction(13, 15),
      fraction(9, 13),
      fraction(4, 5),
      fraction(7, 8),
      fraction(11, 15),
      fraction(2, 3),
      fraction(10, 11),
      fraction(5, 7),
    ]);
  });

  test('of eight 6.257 come, six or more with 2567168/3378375', () => {
    expect(fractionToNumber(expectedComing(records)).toFixed(3)).toBe('6.257');
    expect(chanceOfAtLeast(records, 6)).toEqual(fraction(2_567_168, 3_378_375));
    expect(fractionToNumber(chanceOfAtLeast(records, 5)).toFixed(3)).toBe('0.931');
  });

  test('more are asked until six come nine times in ten', () => {
    const more = morePeopleToAsk(records, 6);
    expect(more).toBeGreaterThan(0);
    const unknown = { shows: 0, signed: 0 };
    const asked = (count: number) => [...records, ...Array.from({ length: count }, () => unknown)];
    expect(fractionToNumber(chanceOfAtLeast(asked(more), 6))).toBeGreaterThanOrEqual(0.9);
    expect(fractionToNumber(chanceOfAtLeast(asked(more - 1), 6))).toBeLessThan(0.9);
  });
});

describe('supplies', () => {
  const need = { onHand: 0, packPieces: 1, packMinorUnits: null };
  test.for([
    { supplyId: 'can', units: 228, scrapPercent: SCRAP_PERCENT.container, pieces: 235 },
    { supplyId: 'absorber', units: 228, scrapPercent: SCRAP_PERCENT.absorber, pieces: 240 },
    { supplyId: 'label', units: 228, scrapPercent: SCRAP_PERCENT.label, pieces: 251 },
    { supplyId: 'carton of 6', units: 38, scrapPercent: SCRAP_PERCENT.carton, pieces: 38 },
  ])('228 cans need $pieces of $supplyId', ({ supplyId, units, scrapPercent, pieces }) => {
    expect(planSupply({ ...need, supplyId, units, perUnit: 1, scrapPercent }).neededPieces).toBe(pieces);
  });

  test('what is on hand is not bought, and packs are whole', () => {
    const line = planSupply({
      supplyId: 'absorber',
      units: 228,
      perUnit: 1,
      scrapPercent: 5,
      onHand: 60,
      packPieces: 50,
      packMinorUnits: 1_199,
    });
    expect(line).toMatchObject({ neededPieces: 240, shortPieces: 180, packsToBuy: 4, costMinorUnits: 4_796 });
  });

  test.for([
    { packets: 25, jars: 1, packSeconds: 600 },
    { packets: 100, jars: 2, packSeconds: 2400 },
  ])('a pack of $packets packets at 24 s a can goes into $jars jar(s)', ({ packets, jars, packSeconds }) => {
    const plan = planOpenPack({ packets, packetsPerContainer: 1, secondsPerContainer: 24 });
    expect(plan).toEqual({ servedInWindow: 50, jars, packSeconds });
  });
});

// Section 4.6: cans 96/60/48/24.
test('the costs of a session are shared by the cans that each household filled', () => {
  const shares = [96, 60, 48, 24].map((containers, seat) => ({ householdId: `h${seat + 1}`, containers }));
  const { charges, storehouseMinorUnits } = settleSession(
    [
      { name: 'line-fee', minorUnits: 3_000, borneBy: 'containers' },
      { name: 'supplies', minorUnits: 228 * 133, borneBy: 'containers' },
      { name: 'scrap', minorUnits: 665, borneBy: 'containers' },
      { name: 'breakage', minorUnits: 517, borneBy: 'containers' },
      { name: 'scrap', minorUnits: 399, borneBy: 'storehouse' },
    ],
    shares,
  );
  expect(charges.map(({ lines }) => lines.map((line) => line.minorUnits))).toEqual([
    [1_263, 12_768, 280, 218],
    [789, 7_980, 175, 136],
    [632, 6_384, 140, 109],
    [316, 3_192, 70, 54],
  ]);
  expect(charges.reduce((sum, { minorUnits }) => sum + minorUnits, 0)).toBe(3_000 + 30_324 + 665 + 517);
  expect(storehouseMinorUnits).toBe(399);
});
