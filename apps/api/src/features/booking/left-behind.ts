import type { Tx } from '@sheafbook/db';
import type { EquipmentItemRow } from '@sheafbook/db/tables';
import { CHANGEOVER_MINUTES, carriedBy, changeoverMinutes } from '@sheafbook/packing';
import { fieldProblem } from '../../platform/problem.ts';
import { type FoodThrough, listFoodsThrough } from './queries-foods.ts';

/** What some foods leave in a thing together. */
export const carriedByAll = (foods: readonly FoodThrough[]): string[] =>
  [...new Set(foods.flatMap(carriedBy))].toSorted();

/** What went through before: null where nothing did, an empty list where nobody told. */
type Before = readonly FoodThrough[] | null;

/** What is left of the foods before that the next ones do not carry themselves: it must be cleaned off first. */
export function leftBehind(before: Before, next: readonly FoodThrough[]): string[] {
  const own = carriedByAll(next);
  return carriedByAll(before ?? []).filter((allergen) => !own.includes(allergen));
}

/** Whether something went through a thing before and nobody told what, which is not the same as nothing. */
export const isBeforeUntold = ({ touchesFood }: EquipmentItemRow, before: Before): boolean =>
  touchesFood && before !== null && before.length === 0;

/** Whether a thing needs a full clean between two. What nobody told counts as everything. */
export function changesAllergen(
  { touchesFood }: EquipmentItemRow,
  before: readonly FoodThrough[],
  next: readonly FoodThrough[],
): boolean {
  if (!touchesFood) return false;
  if (before.length === 0 || next.length === 0) return true;
  const [from, to] = [{ carries: carriedByAll(before) }, { carries: carriedByAll(next) }];
  return changeoverMinutes(from, to) > CHANGEOVER_MINUTES.wipeDown;
}

/** The foods that a booking names. Of a thing that touches food they are to be told; of any other nobody asks. */
export async function readFoodsThrough(
  tx: Tx,
  item: EquipmentItemRow,
  foodIds: readonly string[],
): Promise<FoodThrough[]> {
  if (!item.touchesFood) return [];
  if (foodIds.length === 0)
    throw fieldProblem(
      'invalid-input',
      'foodIds',
      'Say which foods go through it: what they leave there matters to who comes next.',
    );
  const found = await listFoodsThrough(tx, item.storehouseId, foodIds);
  const known = new Set(found.map(({ foodId }) => foodId));
  const missing = foodIds.findIndex((id) => !known.has(id));
  if (missing >= 0)
    throw fieldProblem('thing-not-found', `foodIds.${missing}`, 'There is no such food here.');
  return found;
}
