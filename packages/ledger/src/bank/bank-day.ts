import { isDay } from '@sheafbook/units';

/** In which order a bank writes day, month and year. Units: none. Errors: none. */
export type DayOrder = 'ymd' | 'dmy' | 'mdy';

// English and Spanish, as banks shorten them.
const MONTHS = [
  ['jan', 'ene'],
  ['feb'],
  ['mar'],
  ['apr', 'abr'],
  ['may'],
  ['jun'],
  ['jul'],
  ['aug', 'ago'],
  ['sep', 'set'],
  ['oct'],
  ['nov'],
  ['dec', 'dic'],
] as const;

/**
 * Reads a day as a bank writes it: 2026-09-15, 20260915, 15/09/2026, 9/15/26, 15.09.2026, 15 Sep 2026, "sep. 15, 2026",
 * a time of day behind it left out. A year of two digits is one of this century.
 * Units: an ISO day; undefined when it is none in that order. Errors: none.
 */
export function readBankDay(text: string, order: DayOrder): string | undefined {
  const bare = text.trim().replace(/[T ]\d{1,2}:\d{2}.*$/, '');
  const named = readNamedMonth(bare);
  if (named) return existing(named);
  const packed = /^(\d{4})(\d{2})(\d{2})$/.exec(bare);
  if (packed) return existing([packed[1], packed[2], packed[3]]);
  const parts = /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})$/.exec(bare);
  if (!parts) return undefined;
  const [, a = '', b = '', c = ''] = parts;
  if (a.length > 2) return c.length <= 2 ? existing([a, b, c]) : undefined;
  if (c.length !== 2 && c.length !== 4) return undefined;
  if (order === 'ymd') return undefined;
  return existing(order === 'dmy' ? [c, b, a] : [c, a, b]);
}

/**
 * Guesses in which order days are written: by a part above twelve; else, where every day would do both ways, by what
 * points and slashes usually mean.
 * Units: none. Errors: none. Source: common practice, no source.
 */
export function guessDayOrder(texts: readonly string[]): DayOrder {
  const pairs = texts.flatMap((text) => {
    const parts = /^(\d{1,2})[-/.](\d{1,2})[-/.]\d{2,4}/.exec(text.trim());
    return parts ? [{ first: Number(parts[1]), second: Number(parts[2]) }] : [];
  });
  if (pairs.length === 0) return 'ymd';
  if (pairs.some(({ first }) => first > 12)) return 'dmy';
  if (pairs.some(({ second }) => second > 12)) return 'mdy';
  return texts.some((text) => /^\d{1,2}\//.test(text.trim())) ? 'mdy' : 'dmy';
}

function readNamedMonth(text: string): [string, string, string] | undefined {
  const words = text
    .toLowerCase()
    .split(/[\s,./-]+|\bde\b/)
    .filter((word) => word !== '');
  if (words.length !== 3) return undefined;
  const at = words.findIndex((word) => /^[a-zé]{3,10}$/.test(word));
  const month = MONTHS.findIndex((names) => names.some((name) => words[at]?.startsWith(name)));
  const [first, second] = words.filter((_, position) => position !== at);
  if (at < 0 || month < 0 || !first || !second) return undefined;
  const [day, year] = first.length === 4 ? [second, first] : [first, second];
  return /^\d{1,2}$/.test(day) && /^\d{2}(\d{2})?$/.test(year) ? [year, String(month + 1), day] : undefined;
}

function existing(parts: readonly (string | undefined)[]): string | undefined {
  const [year = '', month = '', day = ''] = parts;
  const whole = `${year.length === 2 ? `20${year}` : year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return isDay(whole) ? whole : undefined;
}
