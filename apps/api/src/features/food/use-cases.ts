import type { Tx } from '@sheafbook/db';
import type { FoodRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { pageOf } from '../../platform/paging.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { presentFood } from './present.ts';
import {
  insertFood,
  listCodesLike,
  listFoods,
  listOpenBuysOfFood,
  loadFood,
  lockFood,
  updateFood,
} from './queries.ts';
import type { FoodEdit, FoodQuery, FoodRetirement, FoodWish } from './schema.ts';

/** Says in every list that nobody but the group answers for these figures. */
const OWN_RELEASE = 'the group’s own';

/** A page of foods in the order of their codes. */
export function findFoods(context: Context, query: FoodQuery) {
  return withTx(context, async (tx) =>
    pageOf(await listFoods(tx, context.actor.storehouseId, query), query.limit, (food) => food.foodCode),
  );
}

export function readFood(context: Context, foodId: string) {
  return withTx(context, (tx) => loadFood(tx, context.actor.storehouseId, foodId));
}

/** Adds a food of the group's own. Its code is the one given, or made from its name and free beside the others. */
export function addFood(context: Context, wish: FoodWish) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const foodCode = wish.foodCode ?? (await freeCode(tx, storehouseId, wish.nameEn));
    const taken = await listCodesLike(tx, storehouseId, foodCode);
    if (taken.includes(foodCode))
      throw fieldProblem('already-there', 'foodCode', `There is a food with the code ${foodCode} already.`);
    return insertFood(tx, {
      ...wish,
      storehouseId,
      foodCode,
      nameEs: wish.nameEs ?? wish.nameEn,
      isOwn: true,
      sourceRelease: OWN_RELEASE,
      sourceNumber: '',
    });
  });
}

async function freeCode(tx: Tx, storehouseId: string, name: string): Promise<string> {
  const start = codeOfName(name);
  const taken = new Set(await listCodesLike(tx, storehouseId, start));
  for (let number = 1; ; number += 1) {
    const code = number === 1 ? start : `${start}-${number}`;
    if (!taken.has(code)) return code;
  }
}

/** Letters lose their marks, so that "Lentejas pardiñas" becomes lentejas-pardinas; a name without any is "food". */
function codeOfName(name: string): string {
  const plain = name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  const code = plain.replace(/[^a-z0-9]+/g, '-').slice(0, 70);
  return code.replace(/^-+|-+$/g, '') || 'food';
}

/** Changes a food of the group's own. Published figures stay as published. */
export function editFood(context: Context, foodId: string, { version, ...change }: FoodEdit) {
  return withTx(context, async (tx) => {
    const food = await lockFood(tx, context.actor.storehouseId, foodId);
    if (!food.isOwn) throw new Problem('food-is-published', { foodCode: food.foodCode });
    refuseStale(food, version);
    return updateFood(tx, food, change);
  });
}

/** Takes a food off the lists for new buys, or puts it back. What was bought of it stays what it is. */
export function retireFood(context: Context, foodId: string, { version, isRetired }: FoodRetirement) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const food = await lockFood(tx, storehouseId, foodId);
    const openBuys = isRetired ? await listOpenBuysOfFood(tx, storehouseId, foodId) : [];
    if (openBuys.length > 0)
      throw new Problem('in-use', {
        detail: `This food is on a line of a buy that goes on: ${openBuys.map(({ name }) => name).join(', ')}.`,
        buys: openBuys,
      });
    refuseStale(food, version);
    return updateFood(tx, food, { retiredAt: isRetired ? context.now() : null });
  });
}

function refuseStale(food: FoodRow, version: number): void {
  if (food.version !== version) throw new Problem('stale-version', { newer: presentFood(food) });
}
