import {
  type ThermometerReading,
  thermometerReadingFromFahrenheit,
  thermometerReadingInFahrenheit,
} from '@sheafbook/packing';
import { fahrenheitStepFromCelsius, formatDecimal, fraction } from '@sheafbook/units';
import type { Formats } from '../../text/format.ts';
import { degreeUnitOf } from '../place/degrees.ts';

type Tenths = { readonly known: number; readonly shown: number; readonly limit: number };

/** A kept check in tenths of its reader's degrees. */
export function tenthsShown(reading: ThermometerReading, format: Formats): Tenths {
  if (degreeUnitOf(format) === 'F') return thermometerReadingInFahrenheit(reading);
  return { known: reading.knownTenths, shown: reading.shownTenths, limit: reading.limitTenths };
}

/** A check that was typed in tenths of its reader's degrees, as it is kept. */
export function readingTyped({ known, shown, limit }: Tenths, format: Formats): ThermometerReading {
  if (degreeUnitOf(format) === 'F') return thermometerReadingFromFahrenheit({ known, shown, limit });
  return { knownTenths: known, shownTenths: shown, limitTenths: limit };
}

/** Tenths of the reader's degrees, with a tenth only where there is one. */
export const sayTenths = (tenths: number, format: Formats): string =>
  `${formatDecimal(fraction(tenths, 10), tenths % 10 === 0 ? 0 : 1, format.language)} °${degreeUnitOf(format)}`;

/** How much warmer or colder, of kept tenths of a degree Celsius. */
export const sayStep = (tenthsCelsius: number, format: Formats): string =>
  sayTenths(degreeUnitOf(format) === 'F' ? fahrenheitStepFromCelsius(tenthsCelsius) : tenthsCelsius, format);
