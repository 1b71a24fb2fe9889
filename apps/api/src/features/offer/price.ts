import type { Tx } from '@sheafbook/db';
import { priceOfGrams } from '@sheafbook/sharing';
import { fieldProblem } from '../../platform/problem.ts';
import { findLandedCost } from '../coverage/use-cases.ts';
import { loadWorths } from '../stock-count/use-cases.ts';
import type { Owned } from './queries.ts';
import type { OfferWish } from './schema.ts';

/** What each container is to cost whoever takes it; fixed here, so that nobody's claim costs more than was shown. */
export async function priceContainers(
  tx: Tx,
  storehouseId: string,
  wish: { householdId: string | null; owned: readonly Owned[]; price: OfferWish['price'] },
): Promise<number[]> {
  const { householdId, owned, price } = wish;
  if (price.kind === 'gift') return owned.map(() => 0);
  if (price.kind === 'named') return owned.map(() => price.minorUnitsEach);
  const costs =
    householdId === null
      ? await loadWorths(
          ...([tx, storehouseId] as const),
          owned.map(({ lot, grams }) => ({ lotId: lot.lotId, grams })),
        )
      : await ownCosts(tx, householdId, owned);
  if (costs.includes(0))
    throw fieldProblem(
      'cost-unknown',
      'price',
      'The book does not know what this cost. Name an amount, or give it.',
    );
  return costs;
}

/**
 * What came from outside the store has no cost in the book; what it bought counts at the household's average, landed. An
 * offer is of one food, so one look finds it.
 */
async function ownCosts(tx: Tx, householdId: string, owned: readonly Owned[]): Promise<number[]> {
  const bought = owned.find(({ lot }) => lot.originNote === '');
  const of = bought && { householdId, foodId: bought.food.foodId };
  const cost = of && (await findLandedCost(tx, bought.lot.storehouseId, of));
  return owned.map(({ lot, grams }) =>
    cost && cost.grams > 0 && lot.originNote === '' ? priceOfGrams(cost, grams) : 0,
  );
}
