import { isPartialDay } from './partial-day.ts';

/** Which of day and month a sheet writes first where both are figures. Units: none. Errors: none. */
export type DayOrder = 'day-first' | 'month-first';

/** Why a typed day is refused. Units: none. Errors: none. */
export type DayProblem = 'empty' | 'not-a-day' | 'no-such-day' | 'short-year' | 'ambiguous-day';

type Read = { readonly partialDay: string } | { readonly problem: DayProblem };

// Nobody types a day this long, and a bound keeps hostile text cheap.
const LONGEST_TEXT = 60;

/** The first three letters tell the months apart in either language; English and Spanish agree on seven of them. */
const MONTH_OF_START: Readonly<Record<string, number>> = {
  ...{
    jan: 1,
    ene: 1,
    feb: 2,
    mar: 3,
    apr: 4,
    abr: 4,
    may: 5,
    jun: 6,
    jul: 7,
    aug: 8,
    ago: 8,
    sep: 9,
    set: 9,
  },
  ...{ oct: 10, nov: 11, dec: 12, dic: 12 },
};
const MONTH_WORD =
  /^(jan(uary)?|ene(ro)?|feb(ruary|rero)?|mar(ch|zo)?|apr(il)?|abr(il)?|may(o)?|june?|junio|july?|julio|aug(ust)?|ago(sto)?|sept?(ember)?|septiembre|set(iembre)?|oct(ober|ubre)?|nov(ember|iembre)?|dec(ember)?|dic(iembre)?)$/;

/**
 * Reads a day, a month or a year as people write them in English or Spanish: "2024-03-01", "3/2024", "1 Mar 2024",
 * "March 1, 2024", "1 de marzo de 2024", "2024". In "03/04/2024" either may be the month: it is refused unless `order`
 * says which, or one of them is past twelve, or both are the same. A midnight that a spreadsheet adds is passed over.
 * Units: ISO 8601, as fine as it was written. Errors: none for any text; a `problem` says why a text is refused.
 */
export function parsePartialDay(text: string, order?: DayOrder): Read {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[ t]00:00(:00(\.0+)?)?z?$/, '');
  if (plain === '') return { problem: 'empty' };
  if (plain.length > LONGEST_TEXT) return { problem: 'not-a-day' };
  const figures = /^(\d{4})(?:[-/.](\d{1,2}))?(?:[-/.](\d{1,2}))?$/.exec(plain);
  if (figures) return dayOf(figures[1], figures[2], figures[3]);
  const monthOfYear = /^(\d{1,2})[-/.](\d{4})$/.exec(plain);
  if (monthOfYear) return dayOf(monthOfYear[2], monthOfYear[1]);
  const three = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d+)$/.exec(plain);
  return three ? byOrder([Number(three[1]), Number(three[2])], three[3] ?? '', order) : byWords(plain);
}

function byOrder([first, second]: readonly [number, number], year: string, order?: DayOrder): Read {
  if (year.length !== 4) return { problem: year.length === 2 ? 'short-year' : 'not-a-day' };
  const isClear = first === second || first > 12 || second > 12;
  if (order === undefined && !isClear) return { problem: 'ambiguous-day' };
  const isDayFirst = order === undefined ? first > 12 : order === 'day-first';
  return isDayFirst ? dayOf(year, second, first) : dayOf(year, first, second);
}

function byWords(text: string): Read {
  const words = text
    .replaceAll(/[.,/-]/g, ' ')
    .split(/\s+/)
    .filter((word) => word !== '' && word !== 'de' && word !== 'del');
  const month = words.find((word) => MONTH_WORD.test(word));
  const figures = words
    .filter((word) => word !== month)
    .map((word) => word.replace(/^(\d{1,2})(st|nd|rd|th|º)$/, '$1'));
  if (month === undefined || !figures.every((figure) => /^\d+$/.test(figure)))
    return { problem: 'not-a-day' };
  const monthNumber = MONTH_OF_START[month.slice(0, 3)];
  const [first = '', second = first] = figures;
  if (figures.length === 0 || figures.length > 2) return { problem: 'not-a-day' };
  if (second.length === 2) return { problem: 'short-year' };
  if (second.length !== 4) return { problem: 'not-a-day' };
  return figures.length === 2 ? dayOf(second, monthNumber, first) : dayOf(second, monthNumber);
}

function dayOf(year: string | undefined, month?: number | string, day?: number | string): Read {
  const parts = [year, month, day]
    .filter((part) => part !== undefined)
    .map((part) => `${part}`.padStart(2, '0'));
  const partialDay = parts.join('-');
  return isPartialDay(partialDay) ? { partialDay } : { problem: 'no-such-day' };
}
