import { type Interval, readWallTime, sameTimeDaysLater } from '@sheafbook/booking';
import type { Context } from '../../platform/context.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import type { Times } from './schema.ts';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

/** Nobody books further ahead than this. Source: common practice, no source. */
export const HORIZON_DAYS = 90;

export const minutes = (count: number): number => count * MINUTE;

/** The instants of two times on the wall, refused when they run backwards, are over, or too far ahead. */
export function readTimes(context: Context, times: Times): Interval {
  const { timeZone } = context.actor;
  const startMs = readTime(timeZone, 'from', { wallTime: times.from, isSecond: times.isFromSecond });
  const endMs = readTime(timeZone, 'until', { wallTime: times.until, isSecond: times.isUntilSecond });
  const nowMs = context.now().getTime();
  if (startMs >= endMs) throw fieldProblem('invalid-input', 'until', 'A booking ends after it begins.');
  if (startMs < nowMs) throw fieldProblem('invalid-input', 'from', 'This time is over. Book from now on.');
  if (startMs > nowMs + HORIZON_DAYS * DAY)
    throw fieldProblem('invalid-input', 'from', `Nobody books more than ${HORIZON_DAYS} days ahead.`);
  return { startMs, endMs };
}

function readTime(
  timeZone: string,
  field: string,
  { wallTime, isSecond }: { wallTime: string; isSecond: boolean },
): number {
  const reading = readWallTime(wallTime, timeZone);
  if (reading.comes === 'once') return reading.atMs;
  if (reading.comes === 'twice') return isSecond ? reading.secondMs : reading.firstMs;
  const message = `The clocks skip this time; the next that comes is ${reading.nextWallTime}.`;
  throw new Problem('invalid-input', {
    detail: message,
    fields: [{ field, message }],
    nextWallTime: reading.nextWallTime,
  });
}

/** A loan of so many days ends when the clock shows what it showed, not after so many times 24 hours. */
export function refuseTooLong({ actor }: Context, { startMs, endMs }: Interval, longestDays: number): void {
  if (endMs > sameTimeDaysLater(startMs, longestDays, actor.timeZone))
    throw fieldProblem('invalid-input', 'until', `It is lent for ${longestDays} days at most.`);
}
