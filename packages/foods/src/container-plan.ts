import { assertWhole } from '@sheafbook/units';
import { type ContainerCount, containersFor } from './containers-for.ts';
import type { HasBulk } from './level-fill.ts';

/**
 * What a household wants of its share in one kind of container: some grams of it, or whatever is left.
 * Units: whole grams, null for the rest; `priceMinorUnits` for one container, null when nobody has said.
 * Errors: none by itself.
 */
export type ContainerWish = {
  readonly kindId: string;
  readonly capacityMicrolitres: number;
  readonly priceMinorUnits: number | null;
  readonly grams: number | null;
};

/**
 * One wish as it comes out: whole containers filled level, and what they cost.
 * Units: pieces, whole grams, minor units; `costMinorUnits` null when the price is unknown. Errors: none by itself.
 */
export type PlannedContainers = Omit<ContainerCount, 'remainderGrams' | 'containersForAll'> & {
  readonly kindId: string;
  readonly grams: number;
  readonly costMinorUnits: number | null;
};

/**
 * Divides a share over the containers that its household wants, wish after wish. Containers are whole and filled level;
 * what fills no whole one goes on to the next wish, and what fills none at the end is the odd remainder.
 * Units: whole grams; the planned grams and the remainder add up to the share.
 * Shape: one row a wish, in the same order; null when the food's bulk density is unknown.
 * Errors: AssertionError when a mass is not whole and ≥ 0 or a container holds less than a gram.
 */
export function planContainers(
  shareGrams: number,
  wishes: readonly ContainerWish[],
  food: HasBulk,
): { readonly planned: readonly PlannedContainers[]; readonly remainderGrams: number } | null {
  assertWhole(shareGrams, 'shareGrams');
  const planned: PlannedContainers[] = [];
  let leftGrams = shareGrams;
  let carriedGrams = 0;
  for (const wish of wishes) {
    const wantedGrams = Math.min(leftGrams, wish.grams === null ? leftGrams : wish.grams + carriedGrams);
    const count = containersFor(wantedGrams, wish, food);
    if (!count) return null;
    const { containers, perContainerGrams, remainderGrams } = count;
    const { kindId, priceMinorUnits } = wish;
    const costMinorUnits = priceMinorUnits === null ? null : priceMinorUnits * containers;
    const grams = containers * perContainerGrams;
    planned.push({ kindId, containers, perContainerGrams, grams, costMinorUnits });
    carriedGrams = remainderGrams;
    leftGrams -= grams;
  }
  return { planned, remainderGrams: leftGrams };
}
