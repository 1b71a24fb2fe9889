import type { SeenHold } from './queries.ts';

/** The few words that name what a hold is on; chosen containers have none in common. */
export function nameOf(
  seen: Pick<SeenHold, 'hold' | 'bag' | 'lot' | 'food' | 'supplier' | 'session' | 'place'>,
  language: 'en' | 'es' = 'en',
): string {
  const { hold, bag, lot, food, supplier, session, place } = seen;
  const foodName = language === 'es' ? food?.nameEs : food?.nameEn;
  const name = {
    bag: bag?.bagCode,
    lot: lot?.supplierMark || foodName,
    session: session?.name,
    delivery: supplier?.name,
    mark: hold.supplierMark,
    food: foodName,
    place: place?.name,
  }[hold.scope];
  return name ?? '';
}
