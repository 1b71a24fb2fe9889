import {
  assert,
  assertWhole,
  celsiusStepFromFahrenheit,
  daysBetween,
  fahrenheitStepFromCelsius,
} from '@sheafbook/units';

/** A scale is laid a known weight on again after so long. Units: days. Errors: none. Source: common practice, no source. */
export const SCALE_CHECK_DAYS = 30;

/**
 * A thermometer is held into a known temperature again after so long: job map 8, which starts with 90 days.
 * Units: days. Errors: none. Source: common practice, no source.
 */
export const THERMOMETER_CHECK_DAYS = 90;

/**
 * A known weight on a scale, what it showed, and by how much the group or its maker lets it be off.
 * Units: grams. Errors: none by itself.
 */
export type ScaleReading = {
  readonly laidGrams: number;
  readonly shownGrams: number;
  readonly limitGrams: number;
};

/**
 * By how much a scale shows more (above zero) or less (below) than lies on it, and whether that is within its limit. At its
 * limit it is true still.
 * Units: grams. Errors: AssertionError when a figure is not whole and ≥ 0, or nothing was laid on.
 */
export function judgeScale({ laidGrams, shownGrams, limitGrams }: ScaleReading): {
  readonly offByGrams: number;
  readonly isTrue: boolean;
} {
  assertWhole(laidGrams, 'laidGrams');
  assertWhole(shownGrams, 'shownGrams');
  assertWhole(limitGrams, 'limitGrams');
  assert(laidGrams > 0, 'a scale is checked with a weight');
  const offByGrams = shownGrams - laidGrams;
  return { offByGrams, isTrue: Math.abs(offByGrams) <= limitGrams };
}

/**
 * What a thermometer of food or of a room is checked at and shows: from the coldest freezer to the hottest oven.
 * Units: tenths of a degree Celsius. Errors: none. Source: common practice, no source.
 */
export const THERMOMETER_TENTHS = { least: -1000, most: 3000 } as const;

/**
 * A thermometer in something whose temperature is known, what it showed, and by how much the group or its maker lets it be
 * off. Water boils the colder the higher one is, so whoever checks says what it should show.
 * Units: tenths of a degree Celsius. Errors: none by itself.
 */
export type ThermometerReading = {
  readonly knownTenths: number;
  readonly shownTenths: number;
  readonly limitTenths: number;
};

/**
 * By how much a thermometer shows too much (above zero) or too little, and whether that is within its limit. At its limit it
 * is true still.
 * Units: tenths of a degree Celsius. Errors: AssertionError when a figure is not whole, a temperature is outside
 * `THERMOMETER_TENTHS`, or the limit is below zero.
 */
export function judgeThermometer({ knownTenths, shownTenths, limitTenths }: ThermometerReading): {
  readonly offByTenths: number;
  readonly isTrue: boolean;
} {
  for (const tenths of [knownTenths, shownTenths]) {
    assert(Number.isSafeInteger(tenths), `whole tenths of °C are needed, got ${tenths}`);
    const { least, most } = THERMOMETER_TENTHS;
    assert(tenths >= least && tenths <= most, `no thermometer is at ${tenths} tenths of °C`);
  }
  assertWhole(limitTenths, 'limitTenths');
  const offByTenths = shownTenths - knownTenths;
  return { offByTenths, isTrue: Math.abs(offByTenths) <= limitTenths };
}

/**
 * A check that was read off in °F, as it is kept. What the thermometer was off by is turned into °C as the limit is, so that
 * rounding to tenths never makes one that is at its limit in whole °F off.
 * Units: tenths of °F in, tenths of °C out. Errors: AssertionError when a figure is not whole.
 */
export function thermometerReadingFromFahrenheit(read: {
  readonly known: number;
  readonly shown: number;
  readonly limit: number;
}): ThermometerReading {
  const knownTenths = celsiusStepFromFahrenheit(read.known - 320);
  return {
    knownTenths,
    shownTenths: knownTenths + celsiusStepFromFahrenheit(read.shown - read.known),
    limitTenths: celsiusStepFromFahrenheit(read.limit),
  };
}

/**
 * A kept check as it was read off in °F, the other way round.
 * Units: tenths of °C in, tenths of °F out. Errors: AssertionError when a figure is not whole.
 */
export function thermometerReadingInFahrenheit({
  knownTenths,
  shownTenths,
  limitTenths,
}: ThermometerReading): { readonly known: number; readonly shown: number; readonly limit: number } {
  const known = 320 + fahrenheitStepFromCelsius(knownTenths);
  const shown = known + fahrenheitStepFromCelsius(shownTenths - knownTenths);
  return { known, shown, limit: fahrenheitStepFromCelsius(limitTenths) };
}

/**
 * How a scale or a thermometer stands on a day by its last check: nobody checked it, it was off, that is too long ago, or it
 * is true.
 * Units: none. Errors: none.
 */
export type ScaleVerdict = 'never-checked' | 'off' | 'check-is-old' | 'true';

/**
 * Whether a scale is to be weighed on, on a day. One that was off stays off until a later check finds it true, however old
 * that is; one that was true is so for `SCALE_CHECK_DAYS` days, the last of them with it. A check of a later day than asked
 * counts as of that day.
 * Units: grams, whole days. Errors: AssertionError as `judgeScale`, or when a day is none.
 */
export function scaleStanding(
  last: (ScaleReading & { readonly checkedOn: string }) | null,
  onDay: string,
): { readonly verdict: ScaleVerdict; readonly offByGrams: number | null; readonly daysSince: number | null } {
  if (last === null) return { verdict: 'never-checked', offByGrams: null, daysSince: null };
  const { offByGrams, isTrue } = judgeScale(last);
  return { offByGrams, ...verdictOf({ isTrue, checkedOn: last.checkedOn }, onDay, SCALE_CHECK_DAYS) };
}

/**
 * Whether a thermometer is to be gone by, on a day, by the same rule as a scale, for
 * `THERMOMETER_CHECK_DAYS` days.
 * Units: tenths of a degree Celsius, whole days. Errors: AssertionError as `judgeThermometer`, or when a day is none.
 */
export function thermometerStanding(
  last: (ThermometerReading & { readonly checkedOn: string }) | null,
  onDay: string,
): {
  readonly verdict: ScaleVerdict;
  readonly offByTenths: number | null;
  readonly daysSince: number | null;
} {
  if (last === null) return { verdict: 'never-checked', offByTenths: null, daysSince: null };
  const { offByTenths, isTrue } = judgeThermometer(last);
  return {
    offByTenths,
    ...verdictOf({ isTrue, checkedOn: last.checkedOn }, onDay, THERMOMETER_CHECK_DAYS),
  };
}

function verdictOf(
  { isTrue, checkedOn }: { isTrue: boolean; checkedOn: string },
  onDay: string,
  goodForDays: number,
): { readonly verdict: ScaleVerdict; readonly daysSince: number } {
  const daysSince = Math.max(0, daysBetween(checkedOn, onDay));
  const isOld = daysSince > goodForDays;
  return { verdict: !isTrue ? 'off' : isOld ? 'check-is-old' : 'true', daysSince };
}
