const HOUR = 60;
const DAY = 24 * HOUR;

/** A waiting time in the largest unit that says it whole. */
export function sayWait(
  minutes: number,
  words: {
    readonly days: (count: number) => string;
    readonly hours: (count: number) => string;
    readonly minutes: (count: number) => string;
  },
): string {
  if (minutes % DAY === 0) return words.days(minutes / DAY);
  return minutes % HOUR === 0 ? words.hours(minutes / HOUR) : words.minutes(minutes);
}
