import { formatDecimal, formatMass, formatMoney, formatPricePerMass, fraction } from '@sheafbook/units';
import type { Language } from './taste.ts';

export type Formats = ReturnType<typeof formatsOf>;

/** Everything that a page writes of figures and days, in one person's language and units. */
export function formatsOf(want: {
  language: Language;
  massUnit: 'lb' | 'kg';
  currency: string;
  timeZone: string;
}) {
  const { language, massUnit, currency, timeZone } = want;
  const locale = language === 'es' ? 'es' : 'en-GB'; // day before month in both
  const dayOf = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(locale, { timeZone: 'UTC', ...options });
  const day = dayOf({ day: 'numeric', month: 'short', year: 'numeric' });
  const dayMonth = dayOf({ day: 'numeric', month: 'long' });
  const shortDay = dayOf({ day: 'numeric', month: 'short' });
  const instant = new Intl.DateTimeFormat(locale, {
    timeZone,
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  const hour = new Intl.DateTimeFormat(locale, {
    timeZone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  return {
    language,
    massUnit,
    currency,
    timeZone,
    mass: (grams: number) => formatMass(grams, { unit: massUnit, locale: language }),
    massIn: (grams: number, unit: 'lb' | 'kg') => formatMass(grams, { unit, locale: language }),
    count: (value: number) => formatDecimal(fraction(value), 0, language),
    money: (minorUnits: number) => formatMoney(minorUnits, currency, language),
    /** A landed price of one pound or kilogram, to a tenth of the smallest coin. */
    perUnit: (price: { minorUnits: number; grams: number }, unit: 'lb' | 'kg') =>
      formatPricePerMass(price, { unit, locale: language }),
    day: (iso: string) => day.format(new Date(`${iso}T00:00:00Z`)),
    /** A sentence of the server's with its days as people write them. */
    sentence: (text: string) =>
      text.replaceAll(/\b\d{4}-\d{2}-\d{2}\b/g, (iso) => day.format(new Date(`${iso}T00:00:00Z`))),
    dayMonth: (iso: string) => dayMonth.format(new Date(`${iso}T00:00:00Z`)),
    shortDay: (iso: string) => shortDay.format(new Date(`${iso}T00:00:00Z`)),
    monthName: (iso: string) => dayOf({ month: 'long' }).format(new Date(`${iso}T00:00:00Z`)),
    /** "November 2026" for "2026-11". */
    monthOf: (month: string) =>
      `${dayOf({ month: 'long' }).format(new Date(`${month}-01T00:00:00Z`))} ${month.slice(0, 4)}`,
    month: (iso: string) => dayOf({ month: 'narrow' }).format(new Date(`${iso}T00:00:00Z`)),
    /** The hour alone, as in the end of a window that began on the same day. */
    hour: (at: string) => hour.format(new Date(at)),
    instant: (at: string) => instant.format(new Date(at)),
    today: () => new Intl.DateTimeFormat('en-CA', { timeZone }).format(new Date()),
  };
}

export function addDays(iso: string, days: number): string {
  return new Date(Date.parse(`${iso}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}
