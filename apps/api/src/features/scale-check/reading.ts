import type { ScaleCheckRow } from '@sheafbook/db/tables';
import type { ScaleReading, ThermometerReading } from '@sheafbook/packing';
import { assert } from '@sheafbook/units';

/** The three figures of a scale's check, which it always has (CHECK scale_check_grams_of_a_scale). */
export function gramsOf({ laidGrams, shownGrams, limitGrams }: ScaleCheckRow): ScaleReading {
  assert(laidGrams !== null && shownGrams !== null && limitGrams !== null, 'a scale is checked in grams');
  return { laidGrams, shownGrams, limitGrams };
}

/** The three figures of a thermometer's check (CHECK scale_check_degrees_of_a_thermometer). */
export function degreesOf({ knownTenths, shownTenths, limitTenths }: ScaleCheckRow): ThermometerReading {
  assert(
    knownTenths !== null && shownTenths !== null && limitTenths !== null,
    'a thermometer is checked in degrees',
  );
  return { knownTenths, shownTenths, limitTenths };
}
