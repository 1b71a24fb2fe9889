import { fahrenheitFromTenthsCelsius, formatDecimal, fraction } from '@sheafbook/units';
import type { Formats } from '../../text/format.ts';
import { partsTyped } from '../../ui/parts-typed.ts';

export type DegreeUnit = 'C' | 'F';

/** Who weighs in pounds reads a thermometer in °F. */
export const degreeUnitOf = ({ massUnit }: Pick<Formats, 'massUnit'>): DegreeUnit =>
  massUnit === 'lb' ? 'F' : 'C';

/** A kept temperature as its reader writes one: whole °F, or °C with a tenth. */
export function sayDegrees(tenthsCelsius: number, format: Formats): string {
  if (degreeUnitOf(format) === 'F') return `${fahrenheitFromTenthsCelsius(tenthsCelsius)} °F`;
  return `${formatDecimal(fraction(tenthsCelsius, 10), 1, format.language)} °C`;
}

/** The tenths of a typed temperature in its own degrees, with any minus before it; null for nothing, undefined for no number. */
export function tenthsTyped(text: string): number | null | undefined {
  const below = /^\s*[-−–](?=\s*\S)/.exec(text);
  const tenths = partsTyped(below ? text.slice(below[0].length) : text, 10);
  return below && typeof tenths === 'number' ? 0 - tenths : tenths;
}

/** The tenths of a degree Celsius of a typed temperature; null for nothing typed, undefined for no number. */
export function degreesTyped(text: string, unit: DegreeUnit): number | null | undefined {
  const tenths = tenthsTyped(text);
  if (tenths === null || tenths === undefined) return tenths;
  return unit === 'C' ? tenths : Math.round(((tenths - 320) * 5) / 9);
}
