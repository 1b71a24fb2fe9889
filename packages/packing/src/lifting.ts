import { assert } from '@sheafbook/units';

/** How well a load is held. Units: none. Errors: none. */
export type Coupling = 'good' | 'fair' | 'poor';

/** How long the lifting goes on. Units: none. Errors: none. */
export type LiftDuration = 'up-to-1-hour' | 'up-to-2-hours' | 'up-to-8-hours';

/**
 * One lift.
 * Units: lengths in centimetres, or inches for `recommendedLimitPounds`: from the ankles to the hands, from the floor to
 * the hands, and of travel; degrees of twist; lifts a minute. Errors: none by itself.
 */
export type Lift = {
  readonly reach: number;
  readonly height: number;
  readonly travel: number;
  readonly twistDegrees: number;
  readonly liftsPerMinute: number;
  readonly duration: LiftDuration;
  readonly coupling: Coupling;
};

// The equation is published in both systems with rounded constants, so the two differ by two or three per cent.
const METRIC = {
  load: 23_000,
  reach: 25,
  farthest: 63,
  waist: 75,
  highest: 175,
  slope: 0.003,
  travel: 4.5,
  least: 25,
};
const CUSTOMARY = {
  load: 51,
  reach: 10,
  farthest: 25,
  waist: 30,
  highest: 70,
  slope: 0.0075,
  travel: 1.8,
  least: 10,
};

// Rows: lifts a minute; columns: up to 1, 2 and 8 hours (DHHS (NIOSH) 94-110, table 5, from memory). The third figure
// of 9 and 10 lifts holds from 75 cm up; below it is 0.
const FREQUENCY: readonly (readonly [number, number, number, number])[] = [
  [0.2, 1, 0.95, 0.85],
  [0.5, 0.97, 0.92, 0.81],
  [1, 0.94, 0.88, 0.75],
  [2, 0.91, 0.84, 0.65],
  [3, 0.88, 0.79, 0.55],
  [4, 0.84, 0.72, 0.45],
  [5, 0.8, 0.6, 0.35],
  [6, 0.75, 0.5, 0.27],
  [7, 0.7, 0.42, 0.22],
  [8, 0.6, 0.35, 0.18],
  [9, 0.52, 0.3, 0.15],
  [10, 0.45, 0.26, 0.13],
];

/**
 * The most that most healthy people should lift so, by the revised NIOSH equation. It is advice for planning a bench, no
 * doctor's word: a person's own limit comes first.
 * Units: centimetres in, whole grams out, rounded down; 0 when nobody should lift so (out of reach, too often).
 * Errors: AssertionError when a length is below zero.
 * Source: DHHS (NIOSH) 94-110: RWL = LC × HM × VM × DM × AM × FM × CM; tables from memory.
 */
export function recommendedLimitGrams(lift: Lift): number {
  return Math.floor(limitOf(lift, METRIC));
}

/** The same in inches and pounds, by the constants published for them. Units: inches, pounds. Errors: as above. */
export function recommendedLimitPounds(lift: Lift): number {
  return limitOf(lift, CUSTOMARY);
}

/**
 * How a load compares with what is recommended: 1 or less is the aim.
 * Units: load and limit in the same unit; infinite when nobody should lift so. Errors: AssertionError below zero.
 */
export function liftingIndex(load: number, limit: number): number {
  assert(load >= 0 && limit >= 0, 'a load is not below zero');
  return limit === 0 ? Number.POSITIVE_INFINITY : load / limit;
}

const LIFTED = { twistDegrees: 0, liftsPerMinute: 1, duration: 'up-to-1-hour' } as const;
/** From the floor at arm's length, and held close at the height of a bench: the two lifts of the worked example. */
const FROM_FLOOR: Lift = { ...LIFTED, reach: 38.1, height: 15.24, travel: 76.2, coupling: 'fair' };
const HELD_CLOSE: Lift = { ...LIFTED, reach: 30.48, height: 76.2, travel: 25, coupling: 'good' };

/** By whom a load is lifted. Units: none. Errors: none. */
export type LiftAdvice = 'one' | 'one-held-close' | 'two';

/**
 * Whether one person lifts a load: from the floor, only where it stands between knee and chest and is held close, or not at all.
 * Units: grams. Errors: AssertionError below zero.
 * Source: the two lifts worked beside DHHS (NIOSH) 94-110, one a minute for up to an hour; a lifting index of 1 or less is the aim.
 */
export function adviseLift(grams: number): LiftAdvice {
  if (liftingIndex(grams, recommendedLimitGrams(FROM_FLOOR)) <= 1) return 'one';
  return liftingIndex(grams, recommendedLimitGrams(HELD_CLOSE)) <= 1 ? 'one-held-close' : 'two';
}

function limitOf(lift: Lift, by: typeof METRIC): number {
  const { reach, height, travel, twistDegrees } = lift;
  for (const length of [reach, height, travel, twistDegrees]) {
    assert(length >= 0, 'a length or an angle is not below zero');
  }
  if (reach > by.farthest || height > by.highest || travel > by.highest || twistDegrees > 135) return 0;
  const isLow = height < by.waist;
  const multipliers = [
    by.reach / Math.max(reach, by.reach),
    1 - by.slope * Math.abs(height - by.waist),
    travel <= by.least ? 1 : 0.82 + by.travel / travel,
    1 - 0.0032 * twistDegrees,
    frequencyMultiplier(lift, isLow),
    couplingMultiplier(lift.coupling, isLow),
  ];
  return multipliers.reduce((limit, multiplier) => limit * multiplier, by.load);
}

function frequencyMultiplier({ liftsPerMinute, duration }: Lift, isLow: boolean): number {
  const row = FREQUENCY.find(([most]) => liftsPerMinute <= most);
  if (!row) return 0;
  const [most, hour, twoHours, day] = row;
  if (duration === 'up-to-1-hour') return hour;
  if (duration === 'up-to-2-hours') return twoHours;
  return most >= 9 && isLow ? 0 : day;
}

function couplingMultiplier(coupling: Coupling, isLow: boolean): number {
  if (coupling === 'good') return 1;
  if (coupling === 'poor') return 0.9;
  return isLow ? 0.95 : 1;
}
