import type { HasBulk, KeepingClass } from '@sheafbook/foods';
import { airBetweenKernels } from './oxygen.ts';
import { voidFractionOf } from './void-fraction.ts';

/**
 * The air in a container with so much of a food in it: between the kernels, and above them where it is not full. What is shaken
 * down past level counts as level, which errs towards more air.
 * Units: whole grams, microlitres of capacity, millilitres out; null when the food's bulk density is unknown.
 * Errors: AssertionError when a figure is not above zero.
 */
export function airInPack(
  grams: number,
  kind: { readonly capacityMicrolitres: number },
  food: HasBulk & { readonly keepingClass: KeepingClass | null },
): number | null {
  if (food.bulkMilligramsPerMillilitre === null) return null;
  const capacity = kind.capacityMicrolitres / 1000;
  const filled = Math.min(capacity, (grams * 1000) / food.bulkMilligramsPerMillilitre);
  return airBetweenKernels(filled, voidFractionOf(food.keepingClass), capacity - filled);
}
