import {
  dayInZone,
  formatDecimal,
  formatMass,
  formatMoney,
  formatPricePerMass,
  fraction,
} from '@sheafbook/units';
import type { PaperWords } from './words/en.ts';
import { en } from './words/en.ts';
import { es } from './words/es.ts';

type PaperLanguage = 'en' | 'es';
type PaperUnit = 'lb' | 'kg';

const WORDS: Readonly<Record<PaperLanguage, PaperWords>> = { en, es };

type Taste = {
  readonly language: PaperLanguage;
  readonly unit: PaperUnit;
  readonly currency: string;
  readonly timeZone: string;
};

/** How figures, days and words read on one paper: both units of mass, the chosen one first (job map section 17). */
export function formatsOf({ language, unit, currency, timeZone }: Taste) {
  const words = WORDS[language];
  const locale = language === 'es' ? 'es' : 'en-GB'; // the day before the month in both
  const other: PaperUnit = unit === 'lb' ? 'kg' : 'lb';
  const mass = (grams: number, of: PaperUnit) => together(formatMass(grams, { unit: of, locale: language }));
  const day = new Intl.DateTimeFormat(locale, {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  });
  const longDay = new Intl.DateTimeFormat(locale, { timeZone: 'UTC', dateStyle: 'long' });
  const month = new Intl.DateTimeFormat(locale, { timeZone: 'UTC', month: 'long', year: 'numeric' });
  const hour = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  const zone = new Intl.DateTimeFormat('en-US', { timeZone, timeZoneName: 'short' });
  const dayOf = (iso: string) => together(day.format(new Date(`${iso}T00:00:00Z`)));
  const instant = (at: Date) => `${dayOf(dayInZone(at.getTime(), timeZone))} ${hour.format(at)}`;
  const price = (of: { minorUnits: number; grams: number }, per: PaperUnit) =>
    formatPricePerMass(of, { unit: per, locale: language });
  return {
    words,
    language,
    unit,
    currency,
    /** "130.7 lb · 59.3 kg", in one line and in two. */
    both: (grams: number) => `${mass(grams, unit)} · ${mass(grams, other)}`,
    bothLines: (grams: number) => `${mass(grams, unit)}\n${mass(grams, other)}`,
    /** "5 lb 8.9 oz · 2,522 g": on a label, to the gram of the book. */
    labelMass: (grams: number) => {
      const pounds = together(formatMass(grams, { unit: 'lb-oz', locale: language }));
      const whole = together(`${formatDecimal(fraction(grams), 0, language)} g`);
      return words.label.net(unit === 'lb' ? `${pounds} · ${whole}` : `${whole} · ${pounds}`);
    },
    first: (grams: number) => mass(grams, unit),
    grams: (grams: number) => together(`${formatDecimal(fraction(grams), 0, language)} g`),
    count: (value: number) => formatDecimal(fraction(value), 0, language),
    /** Hundredths of a per cent as a per cent with one decimal. */
    percent: (hundredths: number) => formatDecimal(fraction(hundredths, 100), 1, language),
    tenths: (value: number) => formatDecimal(fraction(value, 10), 1, language),
    money: (minorUnits: number) => formatMoney(minorUnits, currency, language),
    price,
    perMass: (of: { minorUnits: number; grams: number }) => {
      const order = unit === 'lb' ? words.perMass : words.perMassKilogramFirst;
      return order(price(of, 'lb'), price(of, 'kg'), words.coin(currency));
    },
    day: dayOf,
    longDay: (iso: string) => longDay.format(new Date(`${iso}T00:00:00Z`)),
    /** "November 2026" for "2026-11". */
    month: (iso: string) => together(month.format(new Date(`${iso}-01T00:00:00Z`))),
    instant,
    instantWithZone: (at: Date) => {
      const name = zone.formatToParts(at).find((part) => part.type === 'timeZoneName')?.value ?? timeZone;
      return `${instant(at)} ${name}`;
    },
    /** "2026-11-20 18:05" on the wall of the storehouse. */
    iso: (at: Date) => `${dayInZone(at.getTime(), timeZone)} ${hour.format(at)}`,
  };
}

/** A figure and its unit stay on one line, and so does a day. */
export const together = (text: string): string => text.replaceAll(' ', '\u00a0');

export type Formats = ReturnType<typeof formatsOf>;
