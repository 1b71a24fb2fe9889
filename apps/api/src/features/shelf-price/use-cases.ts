import type { Tx } from '@sheafbook/db';
import { savedAgainstShelf } from '@sheafbook/sharing';
import { addDays, yearEndBy } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listFoodsById, loadFood } from '../food/queries.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import { insertShelfPrice, listBoughtFoods, listShelfPrices, withdrawShelfPrice } from './queries.ts';
import type { ShelfPriceWish } from './schema.ts';

/** Every shelf price that stands. */
export function readShelfPrices(context: Context) {
  return withTx(context, (tx) => listShelfPrices(tx, context.actor.storehouseId));
}

/** Notes what a food costs in a shop, as somebody saw it. */
export function noteShelfPrice(context: Context, wish: ShelfPriceWish) {
  const { storehouseId, personId: notedBy } = context.actor;
  refuseFutureDay(context, { field: 'seenOn', on: wish.seenOn });
  return withTx(context, async (tx) => {
    const food = await loadFood(tx, storehouseId, wish.foodId);
    const price = await insertShelfPrice(tx, {
      ...{ storehouseId, shelfPriceId: newId(context), notedBy, notedAt: context.now() },
      ...wish,
    });
    return { price, food };
  });
}

/** Takes a price that was noted wrong out of the reckoning; its row stays. */
export function takeBackShelfPrice(context: Context, shelfPriceId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    if (!(await withdrawShelfPrice(tx, { storehouseId, shelfPriceId }, context.now())))
      throw new Problem('thing-not-found', { thing: 'shelf-price' });
    return listShelfPrices(tx, storehouseId);
  });
}

/** What was saved against shelf price in the year that runs to a day (job map 3.1, question 25). */
export async function readSavings(context: Context, { through }: { through?: string | undefined }) {
  const throughOn = through ?? todayOf(context);
  refuseFutureDay(context, { field: 'through', on: throughOn });
  return withTx(context, async (tx) => {
    const { yearEndMonth } = await loadStorehouse(tx, context.actor.storehouseId);
    const fromOn = addDays(yearEndBy(addDays(throughOn, -1), yearEndMonth), 1);
    return { period: { fromOn, throughOn }, ...(await savingsInside(tx, context, { fromOn, throughOn })) };
  });
}

/** The same over days that a reader has chosen, inside its own transaction: the review of a year and the page say one sum. */
export async function savingsInside(
  tx: Tx,
  { actor }: Context,
  days: { readonly fromOn: string; readonly throughOn: string },
) {
  const { storehouseId, timeZone } = actor;
  const bought = await listBoughtFoods(tx, storehouseId, { ...days, timeZone });
  const noted = (await listShelfPrices(tx, storehouseId)).map(({ price }) => ({
    ...{ foodId: price.foodId, onDay: price.seenOn },
    // So much for so many milligrams is a thousand times as much for as many grams.
    price: { minorUnits: price.minorUnits * 1000, grams: price.milligrams },
  }));
  const { foods, ...saved } = savedAgainstShelf(bought, noted);
  const named = await listFoodsById(
    tx,
    storehouseId,
    foods.map(({ foodId }) => foodId),
  );
  return {
    ...saved,
    foods: foods.map((row) => {
      const food = named.find(({ foodId }) => foodId === row.foodId);
      return { ...row, nameEn: food?.nameEn ?? '', nameEs: food?.nameEs ?? '' };
    }),
  };
}
export type Savings = Awaited<ReturnType<typeof savingsInside>>;
