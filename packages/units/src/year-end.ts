import { assert } from './assert.ts';
import { addDays } from './day.ts';

/**
 * The last day of the newest year that had ended by a day, that day counted in. A year ends with the last day of a month.
 * Units: an ISO day in and out; the month 1 for January to 12.
 * Errors: AssertionError when `day` is no day, the month is none, or the answer leaves years 0001 to 9999.
 */
export function yearEndBy(day: string, lastMonth: number): string {
  assert(Number.isInteger(lastMonth) && lastMonth >= 1 && lastMonth <= 12, `no month: ${lastMonth}`);
  const lastDayIn = (year: number) => {
    const [nextYear, nextMonth] = lastMonth === 12 ? [year + 1, 1] : [year, lastMonth + 1];
    return addDays(`${String(nextYear).padStart(4, '0')}-${String(nextMonth).padStart(2, '0')}-01`, -1);
  };
  const tomorrow = addDays(day, 1);
  const year = Number(tomorrow.slice(0, 4));
  const ended = lastDayIn(year);
  return ended < tomorrow ? ended : lastDayIn(year - 1);
}
