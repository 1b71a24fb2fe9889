import type { SeenHold } from './queries.ts';

/** The few words that name what a hold is on; chosen containers have none in common. */
export function nameOf(
  seen: Pick<SeenHold, 'hold' | 'bag' | 'lot' | 'food' | 'supplier' | 'session'>,
): string {
  const { hold, bag, lot, food, supplier, session } = seen;
  const name = {
    bag: bag?.bagCode,
    lot: lot?.supplierMark || food?.nameEn,
    session: session?.name,
    delivery: supplier?.name,
    mark: hold.supplierMark,
    food: food?.nameEn,
  }[hold.scope];
  return name ?? '';
}
