import { assert, isTimeZone, listRepeatedHours, type RepeatedHour } from '@sheafbook/units';
import type { LoggerMoment } from './logger-line.ts';

/** Where a moment stands behind the one before it. Units: none. Errors: none. */
export type PlaceInOrder = 'later' | 'same-time' | 'out-of-order';

const SECOND = 1000;

/**
 * Follows the times of a logger's file line by line. They run forward; only where clocks go back in autumn the same hour is
 * told a second time, and that is known by the order of the lines: the first telling has reached the hour's end, the second
 * begins at its beginning, give or take two steps of the logger. Lines that state how far they are ahead of UTC say it
 * themselves. Of a file without either, a place whose clocks never change leaves nothing to tell apart.
 * Units: an IANA time zone. Shape: a function that keeps what it was told and says where the next moment stands.
 * Errors: AssertionError when the zone is unknown.
 */
export function followLogger(timeZone: string): (moment: LoggerMoment) => PlaceInOrder {
  assert(isTimeZone(timeZone), `unknown time zone ${timeZone}`);
  const hoursOfYears = new Map<number, readonly RepeatedHour[]>();
  let last: LoggerMoment | null = null;
  let beforeLast: LoggerMoment | null = null;
  let toldAgain = '';

  const hoursOf = (year: number) => {
    const kept = hoursOfYears.get(year);
    if (kept) return kept;
    const found = listRepeatedHours(year, timeZone);
    hoursOfYears.set(year, found);
    return found;
  };
  const go = (moment: LoggerMoment): PlaceInOrder => {
    beforeLast = last;
    last = moment;
    return 'later';
  };
  /** The hour that this moment begins to tell a second time, if it does. */
  const hourAgain = (at: string, before: string): RepeatedHour | undefined => {
    const stepMs = beforeLast === null ? 0 : wallMs(before) - wallMs(beforeLast.at);
    const reach = stepMs > 0 ? 2 * stepMs : Number.POSITIVE_INFINITY;
    return hoursOf(Number(at.slice(0, 4))).find(({ fromAt, toAt }) => {
      const isWithin = fromAt <= at && at < toAt && fromAt <= before && before < toAt;
      if (!isWithin || toldAgain === fromAt) return false;
      return wallMs(before) + reach >= wallMs(toAt) && wallMs(at) <= wallMs(fromAt) + reach;
    });
  };

  return (moment) => {
    if (!last) return go(moment);
    const [now, before] = [instantOf(moment), instantOf(last)];
    if (now !== null && before !== null)
      return now > before ? go(moment) : now === before ? 'same-time' : 'out-of-order';
    if (moment.at > last.at) return go(moment);
    const hour = hourAgain(moment.at, last.at);
    if (hour === undefined) return moment.at === last.at ? 'same-time' : 'out-of-order';
    toldAgain = hour.fromAt;
    return go(moment);
  };
}

const wallMs = (at: string): number => Date.parse(`${at.replace(' ', 'T')}Z`);

const instantOf = ({ at, offsetMinutes }: LoggerMoment): number | null =>
  offsetMinutes === null ? null : wallMs(at) - offsetMinutes * 60 * SECOND;
