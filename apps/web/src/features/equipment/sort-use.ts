import type { ItemUse } from './queries.ts';

export const USE_ORDERS = ['name', 'used', 'late', 'cost', 'without'] as const;
export type UseOrder = (typeof USE_ORDERS)[number];
type Sorted = Pick<
  ItemUse,
  'itemName' | 'usedTenthsPercent' | 'lateTenthsPercent' | 'costPerUseMinorUnits' | 'waited'
>;

const FIGURES: Readonly<Record<Exclude<UseOrder, 'name'>, (item: Sorted) => number | null>> = {
  used: ({ usedTenthsPercent }) => usedTenthsPercent,
  late: ({ lateTenthsPercent }) => lateTenthsPercent,
  cost: ({ costPerUseMinorUnits }) => costPerUseMinorUnits,
  without: ({ waited }) => waited.without,
};

/** By name, or by a figure with the largest first; what has no such figure comes last, and those alike go by name. */
export function sortUse<Item extends Sorted>(items: readonly Item[], order: UseOrder): Item[] {
  const byName = items.toSorted((a, b) => a.itemName.localeCompare(b.itemName));
  if (order === 'name') return byName;
  const figure = FIGURES[order];
  const rank = (item: Item) => figure(item) ?? Number.NEGATIVE_INFINITY;
  return byName.toSorted((a, b) => (rank(a) === rank(b) ? 0 : rank(b) - rank(a)));
}
