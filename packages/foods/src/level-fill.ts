import {
  asFraction,
  assert,
  assertWhole,
  compareFractions,
  type Fraction,
  floorFraction,
  fraction,
  multiplyFractions,
} from '@sheafbook/units';
import type { BulkDensity } from './food.ts';

/** Any food whose bulk density may be known. Units: milligrams per millilitre. Errors: none. */
export type HasBulk = Pick<BulkDensity, 'bulkMilligramsPerMillilitre'>;

// Real fills run up to 8 % over level when shaken down (common practice, no source).
const SHAKEN = fraction(108, 100);

/**
 * How much of a food a volume holds filled level, not shaken; null when the food's bulk density is unknown.
 * Units: millilitres in, whole grams out, rounded down so that it truly fits.
 * Errors: AssertionError when the volume or the density is not above zero.
 */
export function levelGrams(food: HasBulk, volumeMillilitres: Fraction | number): number | null {
  const grams = exactLevelGrams(food, volumeMillilitres);
  return grams === null ? null : Number(floorFraction(grams));
}

/**
 * How much of a food a volume can be made to hold when shaken down: 8 % over level, the most that is accepted.
 * Units: millilitres in, whole grams out, rounded down; null when the food's bulk density is unknown.
 * Errors: AssertionError when the volume or the density is not above zero.
 */
export function shakenGrams(food: HasBulk, volumeMillilitres: Fraction | number): number | null {
  const grams = exactLevelGrams(food, volumeMillilitres);
  return grams === null ? null : Number(floorFraction(multiplyFractions(grams, SHAKEN)));
}

/** How a fill compares with the container's volume. Units: none. Errors: none. */
export type FillJudgement = 'level' | 'shaken' | 'too-full' | 'unknown';

/**
 * Whether a mass fits a container: up to level, up to 8 % over it (accepted with a word), or beyond (refused).
 * Units: whole grams, microlitres of capacity. `unknown` when the food's bulk density is.
 * Errors: AssertionError when the grams are not whole and ≥ 0, or the capacity is not above zero.
 */
export function judgeFill(
  grams: number,
  kind: { readonly capacityMicrolitres: number },
  food: HasBulk,
): FillJudgement {
  assertWhole(grams, 'grams');
  const volumeMillilitres = fraction(kind.capacityMicrolitres, 1000);
  const level = levelGrams(food, volumeMillilitres);
  const shaken = shakenGrams(food, volumeMillilitres);
  if (level === null || shaken === null) return 'unknown';
  return grams <= level ? 'level' : grams <= shaken ? 'shaken' : 'too-full';
}

function exactLevelGrams(food: HasBulk, volumeMillilitres: Fraction | number): Fraction | null {
  if (food.bulkMilligramsPerMillilitre === null) return null;
  const milligramsPerMillilitre = asFraction(food.bulkMilligramsPerMillilitre);
  const volume = asFraction(volumeMillilitres);
  assert(compareFractions(milligramsPerMillilitre, fraction(0)) > 0, 'a bulk density is above zero');
  assert(compareFractions(volume, fraction(0)) > 0, 'a container holds more than nothing');
  return multiplyFractions(multiplyFractions(milligramsPerMillilitre, volume), fraction(1, 1000));
}
