import { type QueueItem, rotationQueue } from './rotation.ts';

/** A container whose opening is thought about. Units: ISO day; whole days. Errors: none by itself. */
export type ShutItem = QueueItem & {
  readonly foodCode: string;
  readonly packedOn: string;
  /** How long the food keeps once it is open. */
  readonly openedDays: number;
};

/** Why a container is left shut. Units: none. Errors: none. */
export type ShutBecause = 'one-is-open' | 'older-but-keeps-longer';

/**
 * A container to leave shut, and what to open in its place.
 * Units: `costsDays` are the days of life that opening it now would take. Errors: none.
 */
export type LeftShut<Item> = {
  readonly item: Item;
  readonly because: ShutBecause;
  readonly inPlaceOf: Item;
  readonly costsDays: number;
};

/**
 * Which good containers to leave shut: those that people are tempted to open because they are older, though one of the same
 * food is open already or a newer one ends first. What is at risk is never held back.
 * Units: days. Shape: in the order of the queue. Errors: none.
 */
export function leaveShut<Item extends ShutItem>(items: readonly Item[]): LeftShut<Item>[] {
  const firstOf = new Map<string, Item>();
  return rotationQueue(items).flatMap((item) => {
    const first = firstOf.get(item.foodCode);
    if (!first) {
      firstOf.set(item.foodCode, item);
      return [];
    }
    const costsDays = item.daysLeft - item.openedDays;
    if (item.isOpen || item.atRiskGrams > 0 || costsDays <= 0) return [];
    const because = first.isOpen
      ? ('one-is-open' as const)
      : item.packedOn < first.packedOn
        ? ('older-but-keeps-longer' as const)
        : null;
    return because === null ? [] : [{ item, because, inPlaceOf: first, costsDays }];
  });
}
