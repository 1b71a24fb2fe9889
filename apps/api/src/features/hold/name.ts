import type { SeenHold } from './queries.ts';

/** The few words that name what a hold is on; chosen containers have none in common. */
export function nameOf(
  seen: Pick<SeenHold, 'hold' | 'bag' | 'lot' | 'food' | 'supplier' | 'session'>,
  language: 'en' | 'es' = 'en',
): string {
  const { hold, bag, lot, food, supplier, session } = seen;
  const foodName = language === 'es' ? food?.nameEs : food?.nameEn;
  const name = {
    bag: bag?.bagCode,
    lot: lot?.supplierMark || foodName,
    session: session?.name,
    delivery: supplier?.name,
    mark: hold.supplierMark,
    food: foodName,
  }[hold.scope];
  return name ?? '';
}
