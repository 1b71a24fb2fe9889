const DAYS_A_YEAR = 365.25;
const DAYS_A_MONTH = DAYS_A_YEAR / 12;
type OneAndMany = readonly [one: string, many: string];
const count = (many: number, words: OneAndMany) => `${many} ${words[many === 1 ? 0 : 1]}`;

/**
 * How long food keeps, no finer than it is known: days for two months, months for two years, then years; begun ones do not
 * count. A life comes in whole days, so one of full years comes a part of a day short of them.
 */
export function keptTime(
  days: number,
  words: { readonly day: OneAndMany; readonly month: OneAndMany; readonly year: OneAndMany },
): string {
  if (days < 2 * DAYS_A_MONTH) return count(days, words.day);
  return days + 1 < 2 * DAYS_A_YEAR
    ? count(Math.floor(days / DAYS_A_MONTH), words.month)
    : count(Math.floor((days + 1) / DAYS_A_YEAR), words.year);
}
