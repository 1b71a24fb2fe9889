import { type TreatmentCode, treatmentOf } from '@sheafbook/keeping';
import {
  assert,
  assertWhole,
  fractionToNumber,
  GRAMS_PER_UNIT,
  MILLILITRES_PER_UNIT,
  sumOf,
} from '@sheafbook/units';
import { OXYGEN_FRACTION } from './oxygen.ts';

// CO2 44.0095 g/mol; R × 293.15 K / 101,325 Pa = 24.0551 L/mol at 20 °C and 1 atm.
const GRAMS_PER_MOLE = 44.0095;
const LITRES_PER_MOLE = (8.314462618 * 293.15 * 1000) / 101_325;
const GRAMS_PER_OUNCE = fractionToNumber(GRAMS_PER_UNIT.oz);
const MILLILITRES_PER_GALLON = fractionToNumber(MILLILITRES_PER_UNIT['us-gallon']);
const AMBIENT_PPM = 420;

/**
 * Limits of carbon dioxide in the air that people breathe.
 * Units: parts per million by volume. Errors: none.
 * Source: OSHA 29 CFR 1910.1000 Table Z-1 (8 hours) and NIOSH 1994 (immediately dangerous), from memory; ACGIH TLV STEL.
 */
export const CARBON_DIOXIDE_LIMITS = {
  eightHoursPpm: 5_000,
  quarterHourPpm: 30_000,
  dangerPpm: 40_000,
} as const;

/**
 * The gas that dry ice turns into.
 * Units: grams in, litres at 20 °C and 1 atm out. Errors: AssertionError below zero.
 * Source: ideal gas law, molar mass of CO2.
 */
export function carbonDioxideLitres(dryIceGrams: number): number {
  assert(dryIceGrams >= 0, 'a mass is not below zero');
  return (dryIceGrams / GRAMS_PER_MOLE) * LITRES_PER_MOLE;
}

/**
 * Dry ice for a pail by the rule of one ounce a gallon.
 * Units: millilitres of pail in, whole grams out, rounded up. Errors: AssertionError when it holds nothing.
 * Source: published pail leaflets; another gives 4 oz for 5 gallons, an older one more.
 */
export function dryIceGramsFor(pailMillilitres: number): number {
  assert(pailMillilitres > 0, 'a pail holds more than nothing');
  return Math.ceil((pailMillilitres / MILLILITRES_PER_GALLON) * GRAMS_PER_OUNCE);
}

/** The dry ice of containers alike. Units: whole grams; whole minutes, which are the least. Errors: none by itself. */
export type DryIceOfRun = {
  readonly gramsEach: number;
  readonly gramsInAll: number;
  /** From the ice in the container until its lid may be closed all round. */
  readonly waitMinutes: number;
};

/**
 * What containers that are packed alike take of dry ice, and how long their lids stay half open; null where none goes in. What
 * turns to gas before it is in a container comes on top, and is the supplies' matter.
 * Units: microlitres in; whole grams and minutes out. Errors: AssertionError when a figure is not whole, or nothing fits in.
 */
export function dryIceOf(run: {
  readonly treatment: TreatmentCode;
  readonly capacityMicrolitres: number;
  readonly containers: number;
}): DryIceOfRun | null {
  const { treatment, capacityMicrolitres, containers } = run;
  if (treatment !== 'dry-ice') return null;
  assertWhole(containers, 'containers');
  const gramsEach = dryIceGramsFor(capacityMicrolitres / 1000);
  // The last step is the closing; what is waited in it is waited with the lid on.
  const beforeClosing = treatmentOf(treatment).steps.slice(0, -1);
  const waitMinutes = sumOf(beforeClosing.map((step) => step.waitMinutes));
  return { gramsEach, gramsInAll: gramsEach * containers, waitMinutes };
}

/**
 * How often the gas changes the air of a pail, and the oxygen that is left if it mixes perfectly.
 * Units: grams, millilitres of air; fraction by volume. Errors: AssertionError when there is no air.
 */
export function flushWithDryIce(
  dryIceGrams: number,
  airMillilitres: number,
): { readonly airChanges: number; readonly oxygenFraction: number } {
  assert(airMillilitres > 0, 'there is air to change');
  const airChanges = (carbonDioxideLitres(dryIceGrams) * 1000) / airMillilitres;
  return { airChanges, oxygenFraction: OXYGEN_FRACTION * Math.exp(-airChanges) };
}

/**
 * The carbon dioxide that a closed room ends with when all of the ice turns to gas in it.
 * Units: grams, cubic metres; parts per million, added to none that was there. Errors: AssertionError for no room.
 */
export function closedRoomPpm(dryIceGrams: number, roomCubicMetres: number): number {
  assert(roomCubicMetres > 0, 'a room has a volume');
  return (carbonDioxideLitres(dryIceGrams) / 1000 / roomCubicMetres) * 1_000_000;
}

/**
 * The fresh air that keeps a room within a limit while ice turns to gas.
 * Units: grams over hours, cubic metres an hour out. Errors: AssertionError when time or limit leave no room.
 */
export function freshAirNeeded({
  dryIceGrams,
  hours,
  limitPpm = CARBON_DIOXIDE_LIMITS.eightHoursPpm,
}: {
  readonly dryIceGrams: number;
  readonly hours: number;
  readonly limitPpm?: number;
}): number {
  assert(hours > 0, 'the gas takes time');
  assert(limitPpm > AMBIENT_PPM, 'a limit lies above outdoor air');
  const cubicMetresPerHour = carbonDioxideLitres(dryIceGrams) / 1000 / hours;
  return cubicMetresPerHour / ((limitPpm - AMBIENT_PPM) / 1_000_000);
}

/**
 * The most dry ice that may turn to gas in a room without any fresh air.
 * Units: cubic metres in, whole grams out, rounded down. Errors: AssertionError for no room.
 */
export function mostDryIceGrams(
  roomCubicMetres: number,
  limitPpm: number = CARBON_DIOXIDE_LIMITS.eightHoursPpm,
): number {
  assert(roomCubicMetres > 0, 'a room has a volume');
  assert(limitPpm > AMBIENT_PPM, 'a limit lies above outdoor air');
  const litres = (roomCubicMetres * 1000 * (limitPpm - AMBIENT_PPM)) / 1_000_000;
  return Math.floor((litres / LITRES_PER_MOLE) * GRAMS_PER_MOLE);
}
