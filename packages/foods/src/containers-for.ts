import { assert, assertWhole, fraction } from '@sheafbook/units';
import { type HasBulk, levelGrams } from './level-fill.ts';

/**
 * A share in containers of one kind: `containers` filled level, and the odd `remainderGrams` that fill no whole one.
 * `containersForAll` also counts the part-filled one that the remainder would need.
 * Units: pieces and whole grams; containers × perContainerGrams + remainderGrams is the share. Errors: none by itself.
 */
export type ContainerCount = {
  readonly containers: number;
  readonly perContainerGrams: number;
  readonly remainderGrams: number;
  readonly containersForAll: number;
};

/**
 * How many containers a share fills by the kind's true capacity and the food's bulk density, level and not shaken; null
 * when the food's bulk density is unknown. A group that has weighed its own fills uses `containersHolding`.
 * Units: whole grams, microlitres of capacity. Errors: AssertionError when the share is not whole and ≥ 0, or when the
 * container holds less than a gram.
 */
export function containersFor(
  shareGrams: number,
  kind: { readonly capacityMicrolitres: number },
  food: HasBulk,
): ContainerCount | null {
  const perContainerGrams = levelGrams(food, fraction(kind.capacityMicrolitres, 1000));
  return perContainerGrams === null ? null : containersHolding(shareGrams, perContainerGrams);
}

/**
 * How many containers a share fills at a fixed mass each, for a group's own measured average or a printed table.
 * Units: whole grams. Errors: AssertionError when a figure is not whole and ≥ 0, or a container holds nothing.
 */
export function containersHolding(shareGrams: number, perContainerGrams: number): ContainerCount {
  assertWhole(shareGrams, 'shareGrams');
  assertWhole(perContainerGrams, 'perContainerGrams');
  assert(perContainerGrams > 0, 'a container holds at least a gram');
  const remainderGrams = shareGrams % perContainerGrams;
  const containers = (shareGrams - remainderGrams) / perContainerGrams;
  return {
    containers,
    perContainerGrams,
    remainderGrams,
    containersForAll: containers + (remainderGrams > 0 ? 1 : 0),
  };
}

/**
 * Whole cartons and the loose containers that fill none.
 * Units: pieces. Errors: AssertionError when a count is not whole and ≥ 0, or a carton holds nothing.
 */
export function cartonsOf(containers: number, perCarton: number): { cartons: number; loose: number } {
  assertWhole(containers, 'containers');
  assertWhole(perCarton, 'perCarton');
  assert(perCarton > 0, 'a carton holds at least one container');
  return { cartons: Math.floor(containers / perCarton), loose: containers % perCarton };
}
