import type { Tx } from '@sheafbook/db';
import { buyLines, buys, type FoodRow, foods } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import {
  and,
  asc,
  eq,
  gt,
  inArray,
  isNotNull,
  isNull,
  like,
  notInArray,
  or,
  type SQL,
  sql,
} from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import type { FoodQuery } from './schema.ts';

const isThis = (storehouseId: string, foodId: string) =>
  and(eq(foods.storehouseId, storehouseId), eq(foods.foodId, foodId));

/** One row more than the page holds, so that the caller knows whether another page follows. */
export async function listFoods(tx: Tx, storehouseId: string, query: FoodQuery): Promise<FoodRow[]> {
  const { after, limit, search, retired } = query;
  const filters: (SQL | undefined)[] = [
    eq(foods.storehouseId, storehouseId),
    after === undefined ? undefined : gt(foods.foodCode, after),
    retired === 'all' ? undefined : retired === 'yes' ? isNotNull(foods.retiredAt) : isNull(foods.retiredAt),
    ...wordsOf(search).map(holdsWord),
  ];
  return tx
    .select()
    .from(foods)
    .where(and(...filters))
    .orderBy(asc(foods.foodCode))
    .limit(limit + 1);
}

const wordsOf = (search = '') => search.toLowerCase().split(/\s+/).filter(Boolean);

function holdsWord(word: string): SQL | undefined {
  const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
  return or(
    ...[foods.nameEn, foods.nameEs, foods.foodCode].map((column) => like(sql`lower(${column})`, pattern)),
  );
}

export async function loadFood(tx: Tx, storehouseId: string, foodId: string): Promise<FoodRow> {
  return found(await tx.select().from(foods).where(isThis(storehouseId, foodId)));
}

export async function lockFood(tx: Tx, storehouseId: string, foodId: string): Promise<FoodRow> {
  return found(await tx.select().from(foods).where(isThis(storehouseId, foodId)).for('update'));
}

function found([food]: FoodRow[]): FoodRow {
  if (!food) throw new Problem('thing-not-found', { thing: 'food' });
  return food;
}

export async function listFoodsById(
  tx: Tx,
  storehouseId: string,
  foodIds: readonly string[],
): Promise<FoodRow[]> {
  return tx
    .select()
    .from(foods)
    .where(and(eq(foods.storehouseId, storehouseId), inArray(foods.foodId, [...foodIds])));
}

/** As `listFoodsById`, and nobody retires one of them until this transaction ends. Locked in one order. */
export async function lockFoodsForShare(
  tx: Tx,
  storehouseId: string,
  foodIds: readonly string[],
): Promise<FoodRow[]> {
  return tx
    .select()
    .from(foods)
    .where(and(eq(foods.storehouseId, storehouseId), inArray(foods.foodId, [...foodIds])))
    .orderBy(asc(foods.foodId))
    .for('share');
}

/** The codes that begin as this one does, to find a free one beside them. */
export async function listCodesLike(tx: Tx, storehouseId: string, start: string): Promise<string[]> {
  const rows = await tx
    .select({ foodCode: foods.foodCode })
    .from(foods)
    .where(and(eq(foods.storehouseId, storehouseId), like(foods.foodCode, `${start}%`)));
  return rows.map(({ foodCode }) => foodCode);
}

export async function insertFood(tx: Tx, food: typeof foods.$inferInsert): Promise<FoodRow> {
  const [row] = await tx.insert(foods).values(food).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function updateFood(
  tx: Tx,
  food: FoodRow,
  change: Partial<typeof foods.$inferInsert>,
): Promise<FoodRow> {
  const [row] = await tx
    .update(foods)
    .set({ ...change, version: food.version + 1 })
    .where(isThis(food.storehouseId, food.foodId))
    .returning();
  assert(row, 'the food was locked before');
  return row;
}

/** The buys that still go on and have this food on a line. */
export async function listOpenBuysOfFood(tx: Tx, storehouseId: string, foodId: string) {
  return tx
    .select({ buyId: buys.buyId, name: buys.name })
    .from(buyLines)
    .innerJoin(buys, joinOn(buys, buyLines, 'buyId'))
    .where(
      and(
        eq(buyLines.storehouseId, storehouseId),
        eq(buyLines.foodId, foodId),
        notInArray(buys.stage, ['closed', 'called-off']),
      ),
    )
    .orderBy(buys.name);
}
