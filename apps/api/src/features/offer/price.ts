import type { Tx } from '@sheafbook/db';
import { priceOfGrams } from '@sheafbook/sharing';
import { fieldProblem } from '../../platform/problem.ts';
import { findLandedCost } from '../coverage/use-cases.ts';
import { loadWorth } from '../stock-count/use-cases.ts';
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
  const costs: number[] = [];
  for (const row of owned) {
    const cost =
      householdId === null
        ? await loadWorth(tx, storehouseId, { lotId: row.lot.lotId, grams: row.grams })
        : await ownCost(tx, householdId, row);
    if (cost === 0)
      throw fieldProblem(
        'cost-unknown',
        'price',
        'The book does not know what this cost. Name an amount, or give it.',
      );
    costs.push(cost);
  }
  return costs;
}

/** What came from outside the store has no cost in the book; what it bought counts at the household's average, landed. */
async function ownCost(tx: Tx, householdId: string, { lot, food, grams }: Owned): Promise<number> {
  if (lot.originNote !== '') return 0;
  const cost = await findLandedCost(tx, lot.storehouseId, { householdId, foodId: food.foodId });
  return cost && cost.grams > 0 ? priceOfGrams(cost, grams) : 0;
}
