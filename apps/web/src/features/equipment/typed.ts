import { parseMoney } from '@sheafbook/units';

/** Nothing typed is nothing known, and `undefined` is no money. */
export function moneyTyped(text: string, currency: string): number | null | undefined {
  if (text.trim() === '') return null;
  const money = parseMoney(text, currency);
  return 'minorUnits' in money ? money.minorUnits : undefined;
}

/** A whole number, nothing, or `undefined` for what is none. */
export function wholeTyped(text: string): number | null | undefined {
  if (text.trim() === '') return null;
  return /^\d{1,7}$/.test(text.trim()) ? Number(text.trim()) : undefined;
}
