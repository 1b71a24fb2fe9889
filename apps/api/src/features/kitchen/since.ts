import type { KitchenLot, TakeRow } from './queries.ts';

/**
 * The day since when a lot lies open in the kitchen: what came first is eaten first, so it is the oldest of the latest
 * takings that make up what is there.
 */
export function sinceOf({ lotId, grams }: KitchenLot, takes: readonly TakeRow[]): string | null {
  let left = grams;
  let since: string | null = null;
  for (const take of takes.filter((one) => one.lotId === lotId)) {
    if (left <= 0) break;
    left -= take.grams;
    since = take.onDay;
  }
  return since;
}
