import {
  divideFractions,
  formatDecimal,
  fraction,
  multiplyFractions,
  readDecimal,
  roundFraction,
} from '@sheafbook/units';

/** "10.3" grams in thousandths are 10,300. Nothing typed is nothing known, and `undefined` is no number. */
export function partsTyped(text: string, parts: number): number | null | undefined {
  if (text.trim() === '') return null;
  const value = readDecimal(text.trim());
  return value === undefined ? undefined : Number(roundFraction(multiplyFractions(value, fraction(parts))));
}

/** The other way round: 10,300 thousandths are "10.3", without noughts at the end, as a field takes it back. */
export function shownPart(value: number | null, parts: number): string {
  if (value === null) return '';
  const places = String(parts).length - 1;
  const text = formatDecimal(divideFractions(fraction(value), fraction(parts)), places, 'en');
  return text
    .replaceAll(',', '')
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}
