import { bulkOf, judgeFill, shakenGrams } from '@sheafbook/foods';
import { firstDayOf, fraction } from '@sheafbook/units';
import { COMMON } from '../sheet/choices.ts';
import { foldText } from '../sheet/kinds.ts';
import type { RowReader } from '../sheet/row-reader.ts';
import { findFood, findKind, type Known, keyOf } from './book.ts';
import { namedHousehold } from './people.ts';
import type { Planned } from './planned.ts';

export type NewStock = {
  readonly householdId: string | null;
  readonly ownerId: string;
  readonly foodId: string;
  readonly containerKindId: string;
  readonly count: number;
  readonly gramsEach: number;
  readonly packedOn: string;
  readonly originNote: string;
  readonly harvestYear: number | null;
  readonly note: string;
};

/** Containers on a household's shelf or of common stock. What was brought in before, alike in everything, is skipped. */
export function planStock(row: RowReader, known: Known, source: string): Planned<NewStock> {
  const isCommon = COMMON.has(foldText(row.raw('owner')));
  const household = isCommon ? undefined : namedHousehold(row, known, 'owner');
  const food =
    row.needed('food') === undefined
      ? undefined
      : (findFood(known, row.raw('food')) ?? row.refuse('food', 'no-such-food'));
  if (food?.isRetired) row.refuse('food', 'food-retired');
  const kind =
    row.needed('container') === undefined
      ? undefined
      : (findKind(known, row.raw('container')) ?? row.refuse('container', 'no-such-kind'));
  const count = row.raw('count') === '' ? 1 : row.number('count', { least: 1, most: 500 });
  const gramsEach = row.mass('mass');
  const stored = row.day('stored');
  const originNote =
    row.text('origin', 500) || `Opening stock from ${source}; where it grew was not written down`;
  const harvestYear =
    row.raw('harvest') === '' ? null : (row.number('harvest', { least: 1950, most: 2200 }) ?? null);
  const note = row.text('note', 500);
  if (!(isCommon || household) || !food || !kind || !count || !gramsEach || !stored) return {};
  const dense = bulkOf(food);
  const fill = judgeFill(gramsEach, kind, dense);
  if (fill === 'too-full') {
    const most = shakenGrams(dense, fraction(kind.capacityMicrolitres, 1000)) ?? 0;
    row.refuse('mass', 'over-capacity', { most, kind: kind.nameEn });
  }
  const ownerId = household?.id ?? known.commonId;
  const packedOn = firstDayOf(stored);
  const key = keyOf(ownerId, food.id, kind.containerKindId, gramsEach, packedOn, originNote, harvestYear);
  const owner = household?.name ?? null;
  const there = known.stock.get(key) ?? 0;
  if (there >= count) {
    known.stock.set(key, there - count);
    return { effect: { code: 'there', what: 'stock', name: row.raw('food'), household: owner } };
  }
  const { containerKindId } = kind;
  const names = {
    food: food.names[0] ?? '',
    foodEs: food.names[1] ?? '',
    kind: kind.nameEn,
    kindEs: kind.nameEs,
  };
  return {
    effect: { code: 'new-stock', owner, count, gramsEach, stored, fill, ...names },
    made: {
      ...{ householdId: household?.id ?? null, ownerId, foodId: food.id, containerKindId, count, gramsEach },
      ...{ packedOn, originNote, harvestYear, note },
    },
  };
}
