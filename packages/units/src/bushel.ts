import { asFraction } from './decimal.ts';
import { addFractions, divideFractions, type Fraction, fraction, multiplyFractions } from './fraction.ts';
import { exactGrams } from './mass.ts';
import { MILLILITRES_PER_UNIT } from './volume.ts';

/**
 * The trade weight of a bushel of one grain: what a bushel is bought as, whatever it weighs that day.
 * Units: whole pounds per US bushel. Errors: none.
 */
export type BushelWeight = {
  readonly grain: string;
  readonly poundsPerBushel: number;
  readonly source: string;
};

const EXTENSION = 'University of Minnesota Extension, livestock systems DI0469, table A17';
const FARM_SERVICE = 'USDA Farm Service Agency, as reprinted';
const FROM_MEMORY = 'US trade weight, from memory';

/**
 * Trade weights of a bushel by grain. Units: pounds per US bushel. Errors: none.
 * Source: beside each row.
 */
export const BUSHEL_WEIGHTS: readonly BushelWeight[] = [
  { grain: 'wheat', poundsPerBushel: 60, source: EXTENSION },
  { grain: 'soybeans', poundsPerBushel: 60, source: EXTENSION },
  { grain: 'corn', poundsPerBushel: 56, source: EXTENSION },
  { grain: 'rye', poundsPerBushel: 56, source: EXTENSION },
  { grain: 'barley', poundsPerBushel: 48, source: EXTENSION },
  { grain: 'oats', poundsPerBushel: 32, source: EXTENSION },
  { grain: 'sorghum', poundsPerBushel: 56, source: FARM_SERVICE },
  { grain: 'canola', poundsPerBushel: 50, source: FARM_SERVICE },
  { grain: 'rough-rice', poundsPerBushel: 45, source: FARM_SERVICE },
  { grain: 'dry-peas', poundsPerBushel: 60, source: FROM_MEMORY },
  { grain: 'dry-beans', poundsPerBushel: 60, source: FROM_MEMORY },
  { grain: 'lentils', poundsPerBushel: 60, source: FROM_MEMORY },
];

/** What one bushel of a test weight weighs. Units: lb/bu in, kg per bushel out, exact. Errors: AssertionError unless finite. */
export function kilogramsPerBushel(poundsPerBushel: Fraction | number): Fraction {
  return divideFractions(exactGrams(poundsPerBushel, 'lb'), fraction(1000));
}

/**
 * Test weight as bulk density, by plain division of a bushel's mass by its volume.
 * Units: lb/bu in, kg per cubic metre out, exact; the same figure in milligrams per millilitre.
 * Errors: AssertionError unless finite.
 */
export function kilogramsPerCubicMetre(poundsPerBushel: Fraction | number): Fraction {
  const gramsPerMillilitre = divideFractions(
    exactGrams(poundsPerBushel, 'lb'),
    MILLILITRES_PER_UNIT['us-bushel'],
  );
  return multiplyFractions(gramsPerMillilitre, fraction(1000));
}

/**
 * Test weight in kilograms per hectolitre by plain division. It is not what a US grain certificate says: see
 * `reportedKilogramsPerHectolitre`, and store which of the two a figure is.
 * Units: lb/bu in, kg/hL out, exact. Errors: AssertionError unless finite.
 */
export function plainKilogramsPerHectolitre(poundsPerBushel: Fraction | number): Fraction {
  return divideFractions(kilogramsPerCubicMetre(poundsPerBushel), fraction(10));
}

/**
 * Test weight in kilograms per hectolitre as a US grain certificate reports it for wheat, by its own line fit.
 * Units: lb/bu in, kg/hL out, exact. Errors: AssertionError unless finite.
 * Source: USDA Federal Grain Inspection Service (from memory): 1.292 × lb/bu + 1.419; durum 1.292 × lb/bu + 0.630.
 */
export function reportedKilogramsPerHectolitre(
  poundsPerBushel: Fraction | number,
  wheat: 'durum' | 'other-wheat',
): Fraction {
  const scaled = multiplyFractions(asFraction(poundsPerBushel), fraction(1292, 1000));
  return addFractions(scaled, wheat === 'durum' ? fraction(630, 1000) : fraction(1419, 1000));
}

/** How many bushels make a tonne. Units: lb/bu in, bushels per 1,000 kg out, exact. Errors: AssertionError when zero. */
export function bushelsPerTonne(poundsPerBushel: Fraction | number): Fraction {
  return divideFractions(fraction(1000), kilogramsPerBushel(poundsPerBushel));
}
