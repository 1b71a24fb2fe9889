import { assert, assertWhole, fraction, roundFraction } from '@sheafbook/units';

/**
 * How moist hard wheat ends up in air of a given dampness, and the other way round.
 * Units: A and C in kelvin-like constants of the fit, B per per cent dry basis. Errors: none.
 * Source: modified Chung–Pfost equation, ASAE D245, constants for hard wheat.
 */
const HARD_WHEAT = { a: 529.43, b: 0.17609, c: 50.998 } as const;

/**
 * The moisture that hard wheat comes to in air that stays as it is.
 * Units: °C; relative humidity as a fraction; per cent wet basis out (`dryBasisPercent` beside it).
 * Errors: AssertionError when the humidity is not between 0 and 1.
 * Source: as `HARD_WHEAT`.
 */
export function wheatMoisture(
  celsius: number,
  relativeHumidity: number,
): { readonly wetBasisPercent: number; readonly dryBasisPercent: number } {
  assert(relativeHumidity > 0 && relativeHumidity < 1, 'a relative humidity lies between 0 and 1');
  const { a, b, c } = HARD_WHEAT;
  const dryBasisPercent = -(1 / b) * Math.log((-(celsius + c) * Math.log(relativeHumidity)) / a);
  return { wetBasisPercent: (100 * dryBasisPercent) / (100 + dryBasisPercent), dryBasisPercent };
}

/**
 * The dampness of the air between kernels of hard wheat.
 * Units: °C, per cent wet basis; fraction out. Errors: AssertionError when the moisture is not between 0 and 100.
 * Source: as `HARD_WHEAT`.
 */
export function humidityOverWheat(celsius: number, wetBasisPercent: number): number {
  assert(wetBasisPercent > 0 && wetBasisPercent < 100, 'a moisture lies between 0 and 100 per cent');
  const { a, b, c } = HARD_WHEAT;
  const dryBasisPercent = (100 * wetBasisPercent) / (100 - wetBasisPercent);
  return Math.exp((-a / (celsius + c)) * Math.exp(-b * dryBasisPercent));
}

/** Above this dampness between the kernels mould begins to grow. Units: fraction. Errors: none. Source: NDSU Extension slides. */
export const MOULD_HUMIDITY = 0.7;

const FAHRENHEIT = [30, 40, 50, 60, 70, 80] as const;

// NDSU Extension, allowable storage time of cereal grains in days; 300 stands for "over 300".
const STORAGE_DAYS: readonly (readonly [moisture: number, ...days: number[]])[] = [
  [14, 300, 300, 300, 300, 200, 140],
  [15, 300, 300, 300, 240, 125, 70],
  [16, 300, 300, 230, 120, 70, 40],
  [17, 300, 280, 130, 75, 45, 20],
  [18, 300, 200, 90, 50, 30, 15],
  [19, 300, 140, 70, 35, 20, 10],
  [20, 300, 90, 50, 25, 14, 7],
  [22, 190, 60, 30, 15, 8, 3],
  [24, 130, 40, 15, 10, 6, 2],
  [26, 90, 35, 12, 8, 5, 2],
  [28, 70, 30, 10, 7, 4, 2],
  [30, 60, 25, 5, 5, 3, 1],
];

/**
 * How long undried cereal grain may lie before it loses quality. Between the rows and columns of the table the damper row
 * and the warmer column count, for a grain is never safer than its worse neighbour.
 * Units: per cent wet basis, °F; days. Shape: null below 14 % (the table begins there); `isMoreThan` when it lasts over 300.
 * Errors: AssertionError past the table's end: wetter or warmer than it knows.
 * Source: NDSU Extension, allowable storage time.
 */
export function allowableStorage(
  wetBasisPercent: number,
  fahrenheit: number,
): { readonly days: number; readonly isMoreThan: boolean } | null {
  if (wetBasisPercent < 14) return null;
  const row = STORAGE_DAYS.find(([moisture]) => wetBasisPercent <= moisture);
  const column = FAHRENHEIT.findIndex((most) => fahrenheit <= most);
  assert(row, 'the table knows grain of up to 30 % moisture');
  assert(column >= 0, 'the table knows grain of up to 80 °F');
  const days = row[column + 1] ?? 0;
  return { days, isMoreThan: days === 300 };
}

/**
 * The part of its allowable time that grain has used, adding what it used in each state.
 * Units: days, per cent, °F; 1 is all of it. Errors: as `allowableStorage`.
 * Source: NDSU Extension: used time adds as fractions.
 */
export function usedStorage(
  states: readonly { readonly days: number; readonly wetBasisPercent: number; readonly fahrenheit: number }[],
): number {
  return states.reduce((used, { days, wetBasisPercent, fahrenheit }) => {
    assert(days >= 0, 'time does not run backwards');
    const allowed = allowableStorage(wetBasisPercent, fahrenheit);
    return allowed ? used + days / allowed.days : used;
  }, 0);
}

/** Grain is never taken for wetter than this; a higher figure is a slip. Units: tenths of a per cent, wet basis. Errors: none. Source: common practice, no source. */
export const MOST_MOISTURE_TENTHS = 500;

/** How moist food was when the book's weight was true, and how moist it is now. Units: tenths of a per cent, wet basis. Errors: none. */
export type MoistureReadings = { readonly wasTenths: number; readonly isTenths: number };

/**
 * What the same dry matter weighs at another moisture: m2 = m1·(1−w1)/(1−w2).
 * Units: whole grams, rounded half up. Errors: AssertionError when the mass is not whole and ≥ 0, or a moisture is not whole or
 * above `MOST_MOISTURE_TENTHS`. Source: job map 6.
 */
export function massAtMoisture(grams: number, { wasTenths, isTenths }: MoistureReadings): number {
  assertWhole(grams, 'grams');
  for (const tenths of [wasTenths, isTenths]) {
    assertWhole(tenths, 'tenths');
    assert(tenths <= MOST_MOISTURE_TENTHS, `grain is not ${tenths} tenths of a per cent moist`);
  }
  // In bigints: a thousand tonnes times a thousand is near 2^53.
  return Number(roundFraction(fraction(BigInt(grams) * BigInt(1000 - wasTenths), BigInt(1000 - isTenths))));
}

/**
 * The part of what a second weighing found missing (below zero) or over that two moisture readings explain. It is never more
 * than was found, and nothing where the readings say the opposite: a meter makes no difference where the scale shows none.
 * Units: whole grams. Errors: AssertionError as `massAtMoisture`. Source: job map 6; that it never exceeds what the scale found is
 * common practice, no source.
 */
export function explainedByMoisture(
  { bookedGrams, weighedGrams }: { readonly bookedGrams: number; readonly weighedGrams: number },
  readings: MoistureReadings,
): number {
  assertWhole(weighedGrams, 'weighedGrams');
  const found = weighedGrams - bookedGrams;
  const said = massAtMoisture(bookedGrams, readings) - bookedGrams;
  if (found < 0) return Math.max(found, Math.min(said, 0)) || 0; // no −0
  return Math.min(found, Math.max(said, 0));
}
