import { type DaysCovered, daysCovered, type EdibleLot, gapPieces } from '@sheafbook/coverage';
import { fraction, fractionToNumber } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

// Worked cases of the job's own description, each verified there by bisection of a linear program or by hand. The
// formula is the least over all sets of eaters S and days τ of (food that S can have after τ + what S eats before τ)
// over what S eats a day: the max-flow min-cut theorem on a flow from lots to eaters over time.
const RATES = [
  { eaterId: 'Ana', perDay: fraction(400) },
  { eaterId: 'Ben', perDay: fraction(500) },
  { eaterId: 'Cy', perDay: fraction(250) }, // no wheat
];
const ALL = ['Ana', 'Ben', 'Cy'];

function aLot(lotId: string, grams: number, daysLeft: number): EdibleLot {
  return { lotId, amount: BigInt(grams), daysLeft, eaterIds: lotId.startsWith('W') ? ['Ana', 'Ben'] : ALL };
}

function endOf(covered: DaysCovered, eaterId: string): DaysCovered['days'] | undefined {
  return covered.endsByEater.find((end) => end.eaterId === eaterId)?.days;
}

describe('case 1: the one who eats no wheat runs out first', () => {
  const input = {
    rates: RATES,
    lots: [aLot('W1', 300_000, 800), aLot('R1', 50_000, 500), aLot('O1', 10_000, 30)],
  };
  const covered = daysCovered(input);

  test('230 days: 30 days of oats, then 50,000 g at 250 g a day', () => {
    expect(covered.days).toEqual(fraction(230));
    expect(covered.limitingEaterIds).toEqual(['Cy']);
  });

  test('mass over rate would promise 313.0 days', () => {
    expect(covered.naiveDays).toEqual(fraction(360_000, 1150));
    expect(fractionToNumber(fraction(360_000, 1150))).toBeCloseTo(313.0, 1);
  });

  test('the others could go to day 336: (300,000 g + 2,500 g of oats eaten in time) / 900', () => {
    expect(endOf(covered, 'Ana')).toEqual(fraction(302_500, 900));
    expect(endOf(covered, 'Ben')).toEqual(fraction(302_500, 900));
    expect(endOf(covered, 'Cy')).toEqual(fraction(230));
    expect(fractionToNumber(fraction(302_500, 900))).toBeCloseTo(336.1, 1);
  });

  test('nothing is at risk', () => {
    expect(covered.atRisk).toEqual([]);
  });

  test('until day 300 only what Cy lacks is lacking: 70 days at 250 g', () => {
    expect(gapPieces(input, 300)).toEqual([{ gramsPerDay: fraction(250), coveredGrams: fraction(57_500) }]);
  });
});

describe('case 2: wheat that ends too soon', () => {
  const covered = daysCovered({
    rates: RATES,
    lots: [aLot('W1', 100_000, 365), aLot('W2', 80_000, 60), aLot('R1', 60_000, 900)],
  });

  test('4280/23 days, 186 whole ones, and everybody runs out together', () => {
    expect(covered.days).toEqual(fraction(4280, 23));
    expect(covered.wholeDays).toBe(186);
    expect(covered.limitingEaterIds).toEqual(ALL);
  });

  test('26,000 g of W2 are at risk: in 60 days Ana and Ben eat 54,000 of 80,000', () => {
    expect(covered.atRisk).toEqual([{ lotId: 'W2', amount: fraction(26_000) }]);
  });

  test('mass over rate would promise 208.7 days', () => {
    expect(covered.naiveDays).toEqual(fraction(240_000, 1150));
  });
});

describe('case 3: nothing binds', () => {
  const covered = daysCovered({
    rates: RATES,
    lots: [aLot('W1', 120_000, 400), aLot('W2', 60_000, 90), aLot('R1', 90_000, 700), aLot('O1', 20_000, 60)],
  });

  test('5800/23 days, which is mass over rate', () => {
    expect(covered.days).toEqual(fraction(5800, 23));
    expect(covered.naiveDays).toEqual(covered.days);
    expect(covered.atRisk).toEqual([]);
  });
});

// Energy per kilogram as given there: wheat 3270, rice 3650, oats 3790, beans 3410, oil 8840.
test('energy: 984,242 kcal last eaters of 2000, 2600 and 1400 kcal 492121/3000 days, 164 whole ones', () => {
  const kilocalories = [120 * 3270, 90 * 3650, 20 * 3790, 27 * 3410, (108 * 8840) / 10];
  expect(kilocalories.reduce((sum, each) => sum + each)).toBe(984_242);
  const covered = daysCovered({
    rates: [2000, 2600, 1400].map((each, place) => ({ eaterId: ALL[place] ?? '', perDay: fraction(each) })),
    lots: kilocalories.map((each, place) => ({
      lotId: `lot ${place}`,
      amount: BigInt(each),
      daysLeft: null,
      eaterIds: ALL,
    })),
  });
  expect(covered.days).toEqual(fraction(492_121, 3000));
  expect(covered.wholeDays).toBe(164);
});
