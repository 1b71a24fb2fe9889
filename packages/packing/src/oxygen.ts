import { assert } from '@sheafbook/units';

/** The part of dry air that is oxygen, by volume. Units: none. Errors: none. Source: US Standard Atmosphere (from memory). */
export const OXYGEN_FRACTION = 0.2095;

/** What a pack should be brought down to: no insect lives below it. Units: fraction by volume. Errors: none. */
export const TARGET_OXYGEN_FRACTION = 0.01;

/**
 * The air in a filled pack: between the kernels and above them.
 * Units: millilitres; `voidFraction` is the part of the filled volume that is air, 0 to 1.
 * Errors: AssertionError when a volume is below zero or the fraction is none.
 */
export function airBetweenKernels(
  filledMillilitres: number,
  voidFraction: number,
  headspaceMillilitres = 0,
): number {
  assert(filledMillilitres >= 0, 'a filled volume is not below zero');
  assert(voidFraction >= 0 && voidFraction <= 1, 'a void fraction lies between 0 and 1');
  assert(headspaceMillilitres >= 0, 'a headspace is not below zero');
  return voidFraction * filledMillilitres + headspaceMillilitres;
}

/**
 * The air in a pack whose volume and filling are known: what the solid food does not take up.
 * Units: millilitres, grams, grams per millilitre of the kernel itself (not of the heap).
 * Errors: AssertionError when the food does not fit or a figure is not above zero.
 */
export function airAroundFood(
  packMillilitres: number,
  foodGrams: number,
  kernelGramsPerMillilitre: number,
): number {
  assert(packMillilitres > 0, 'a pack holds more than nothing');
  assert(foodGrams >= 0, 'a mass of food is not below zero');
  assert(kernelGramsPerMillilitre > 0, 'a kernel density is above zero');
  const airMillilitres = packMillilitres - foodGrams / kernelGramsPerMillilitre;
  assert(airMillilitres >= 0, 'the food fits in the pack');
  return airMillilitres;
}

/**
 * How much oxygen an absorber must take up to leave the target. A flexible pack shrinks as the gas goes, so it needs
 * slightly more than a rigid one; the larger figure is used for both.
 * Units: millilitres of air in, millilitres of oxygen out (an absorber's "cc"). Errors: AssertionError below zero.
 * Source: gas law; x = V (0.2095 − t) / (1 − t).
 */
export function absorberNeed(airMillilitres: number, targetFraction = TARGET_OXYGEN_FRACTION): number {
  assert(airMillilitres >= 0, 'a volume of air is not below zero');
  assert(targetFraction >= 0 && targetFraction < OXYGEN_FRACTION, 'the target lies below that of air');
  return (airMillilitres * (OXYGEN_FRACTION - targetFraction)) / (1 - targetFraction);
}

/**
 * The oxygen that is left once packets have taken up their rated capacity.
 * Units: millilitres; fraction by volume out. Errors: AssertionError when there is no air or a rating is below zero.
 */
export function residualOxygen(airMillilitres: number, absorberMillilitres: number): number {
  assert(airMillilitres > 0, 'there is air to begin with');
  assert(absorberMillilitres >= 0, 'a rating is not below zero');
  const oxygenMillilitres = OXYGEN_FRACTION * airMillilitres;
  if (absorberMillilitres >= oxygenMillilitres) return 0;
  return (oxygenMillilitres - absorberMillilitres) / (airMillilitres - absorberMillilitres);
}
