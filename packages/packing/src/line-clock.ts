import {
  addFractions,
  assert,
  assertWhole,
  ceilFraction,
  divideFractions,
  type Fraction,
  floorFraction,
  fraction,
  multiplyFractions,
  roundFraction,
  sumOf,
} from '@sheafbook/units';

/**
 * What a day takes beside the containers themselves.
 * Units: whole minutes. Errors: none by itself.
 */
export type DayMinutes = {
  readonly setupMinutes: number;
  readonly changeoverMinutes: number;
  readonly breakMinutes: number;
  readonly cleanDownMinutes: number;
};

/**
 * How long a day lasts: setting up, the containers at the line's cycle, changing over, resting, cleaning down.
 * Units: containers, seconds a container, minutes; whole seconds out, rounded half up.
 * Errors: AssertionError when a figure is not whole and ≥ 0 or the cycle takes no time.
 */
export function daySeconds(units: number, cycleSeconds: Fraction, day: DayMinutes): number {
  assertWhole(units, 'units');
  assert(cycleSeconds.numerator > 0n, 'a cycle takes time');
  const running = multiplyFractions(fraction(units), cycleSeconds);
  return Number(roundFraction(addFractions(running, fraction(60 * otherMinutes(day)))));
}

/**
 * A duration as it is shown: rounded up to five minutes, since nobody finishes to the second.
 * Units: seconds in, whole minutes out. Errors: AssertionError when it is not whole and ≥ 0.
 */
export function shownMinutes(seconds: number): number {
  assertWhole(seconds, 'seconds');
  return Number(ceilFraction(fraction(seconds, 300))) * 5;
}

/**
 * How many containers fit in a slot.
 * Units: minutes, seconds a container. Errors: AssertionError when a figure is not whole and ≥ 0 or a cycle takes no time.
 * Source: ⌊(slot − setup − changeovers − breaks − clean-down) / cycle⌋, never below 0.
 */
export function slotCapacity(slotMinutes: number, cycleSeconds: Fraction, day: DayMinutes): number {
  assertWhole(slotMinutes, 'slotMinutes');
  assert(cycleSeconds.numerator > 0n, 'a cycle takes time');
  const seconds = 60 * (slotMinutes - otherMinutes(day));
  if (seconds <= 0) return 0;
  return Number(floorFraction(divideFractions(fraction(seconds), cycleSeconds)));
}

/**
 * What a line runs in one go. `notBeforeSecond` is the time that its household booked: nobody brings the food sooner.
 * Units: containers, minutes before the run for changing over, seconds from the start of the day. Errors: none by itself.
 */
export type RunToStart = {
  readonly units: number;
  readonly changeoverMinutes: number;
  readonly notBeforeSecond?: number | undefined;
};

/**
 * When each run of a day starts, on the clock of the line, and how long the line stands still before it. The line is changed
 * over while it waits for a household.
 * Units: as `RunToStart`, seconds from the start of the day out, rounded half up; `waitSeconds` is rounded down.
 * Shape: one a run, in order. Errors: as `daySeconds`.
 */
export function runStarts(
  runs: readonly RunToStart[],
  cycleSeconds: Fraction,
  setupMinutes: number,
): { readonly startsAtSecond: number; readonly endsAtSecond: number; readonly waitSeconds: number }[] {
  let clock = fraction(60 * setupMinutes);
  return runs.map(({ units, changeoverMinutes, notBeforeSecond = 0 }) => {
    assertWhole(units, 'units');
    assertWhole(changeoverMinutes, 'changeoverMinutes');
    const ready = addFractions(clock, fraction(60 * changeoverMinutes));
    const readySecond = Number(floorFraction(ready));
    const waitSeconds = Math.max(0, notBeforeSecond - Number(ceilFraction(ready)));
    const starts = notBeforeSecond > readySecond ? fraction(notBeforeSecond) : ready;
    clock = addFractions(starts, multiplyFractions(fraction(units), cycleSeconds));
    return {
      ...{ startsAtSecond: Number(roundFraction(starts)), endsAtSecond: Number(roundFraction(clock)) },
      waitSeconds,
    };
  });
}

function otherMinutes(day: DayMinutes): number {
  const minutes = [day.setupMinutes, day.changeoverMinutes, day.breakMinutes, day.cleanDownMinutes];
  for (const part of minutes) assertWhole(part, 'minutes');
  return sumOf(minutes);
}
