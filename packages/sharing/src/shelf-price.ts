import { assert, assertWhole, isDay, sumOf } from '@sheafbook/units';
import { splitByWeight } from './split-by-weight.ts';
import { assertUnitPrice, priceOfGrams, type UnitPrice } from './unit-price.ts';

/** What a food cost in a shop on a day, as somebody noted it. Units: ISO day, minor units for grams. Errors: none by itself. */
export type NotedShelfPrice = { readonly foodId: string; readonly onDay: string; readonly price: UnitPrice };

/**
 * A buy that was shared out: what was charged for the goods of each food, and what its foods bear together (freight, levies
 * and the like). What came back, also after the sharing out, is taken off where it belongs, so either may lie below zero.
 * Units: ISO day, grams, minor units. Errors: none by itself.
 */
export type BoughtFoods = {
  readonly onDay: string;
  readonly foods: readonly {
    readonly foodId: string;
    readonly grams: number;
    readonly goodsMinorUnits: number;
  }[];
  readonly togetherMinorUnits: number;
};

/**
 * A food over a year: what it cost landed, and what the same mass cost on a shop's shelf. `shelfMinorUnits` is null where no
 * price was noted; below zero, `savedMinorUnits` says that the shop was cheaper.
 * Units: grams, minor units. Errors: none by itself.
 */
export type SavedOfFood = {
  readonly foodId: string;
  readonly grams: number;
  readonly landedMinorUnits: number;
  readonly shelfMinorUnits: number | null;
  readonly savedMinorUnits: number | null;
};

/**
 * What a group saved against the shelf price: each buy's landed cost beside what its foods cost in a shop by the price that
 * was noted last by its day, or first after it. What a buy's foods bear together is shared by their mass (unit landed is
 * goods, freight and charges by mass: common practice, no source), or evenly where nothing of any of them came, so that the
 * foods add up to what was charged. A food of which no price was noted is told and is in no sum. An estimate: a shop's
 * price holds for that shop and day.
 * Units: as the types; `pricedGrams` of `grams` have a price. Shape: a row for each food that came or cost something, in the
 * order of its first buy.
 * Errors: AssertionError when a mass is not whole and ≥ 0, an amount is not whole, a buy has a cost and no food, a price is
 * for no gram, or a day is none.
 */
export function savedAgainstShelf(buys: readonly BoughtFoods[], noted: readonly NotedShelfPrice[]) {
  for (const { onDay, price } of noted) {
    assert(isDay(onDay), 'a price is noted on a day');
    assertUnitPrice(price);
  }
  const rows = buys.flatMap((buy) => landedOf(buy).map((food) => ({ ...food, shelf: shelfOf(food, noted) })));
  const foods = [...new Set(rows.map(({ foodId }) => foodId))].map((foodId): SavedOfFood => {
    const own = rows.filter((row) => row.foodId === foodId);
    const grams = sumOf(own.map((row) => row.grams));
    const landedMinorUnits = sumOf(own.map((row) => row.landedMinorUnits));
    const shelves = own.flatMap(({ shelf }) => shelf ?? []);
    const shelfMinorUnits = shelves.length === own.length ? sumOf(shelves) : null;
    const savedMinorUnits = shelfMinorUnits === null ? null : shelfMinorUnits - landedMinorUnits;
    return { foodId, grams, landedMinorUnits, shelfMinorUnits, savedMinorUnits };
  });
  const priced = foods.filter(({ savedMinorUnits }) => savedMinorUnits !== null);
  return {
    foods,
    grams: sumOf(foods.map(({ grams }) => grams)),
    pricedGrams: sumOf(priced.map(({ grams }) => grams)),
    savedMinorUnits: sumOf(priced.map(({ savedMinorUnits }) => savedMinorUnits ?? 0)),
  };
}

function landedOf({ onDay, foods, togetherMinorUnits }: BoughtFoods) {
  assert(isDay(onDay), 'a buy is shared out on a day');
  assertWhole(Math.abs(togetherMinorUnits), 'togetherMinorUnits');
  const grams = foods.map((food) => food.grams);
  const weights = sumOf(grams) > 0 || foods.length === 0 ? grams : grams.map(() => 1);
  const parts = togetherMinorUnits === 0 ? [] : splitByWeight(Math.abs(togetherMinorUnits), weights);
  return foods
    .map((food, at) => {
      assertWhole(food.grams, 'grams');
      assertWhole(Math.abs(food.goodsMinorUnits), 'goodsMinorUnits');
      const part = (parts[at] ?? 0) * Math.sign(togetherMinorUnits);
      return { foodId: food.foodId, grams: food.grams, onDay, landedMinorUnits: food.goodsMinorUnits + part };
    })
    .filter((food) => food.grams > 0 || food.landedMinorUnits !== 0);
}

/** By the last price noted by the day, or the first after it. */
function shelfOf(
  { foodId, onDay, grams }: { foodId: string; onDay: string; grams: number },
  noted: readonly NotedShelfPrice[],
): number | null {
  const own = noted
    .filter((note) => note.foodId === foodId)
    .toSorted((a, b) => (a.onDay < b.onDay ? -1 : a.onDay > b.onDay ? 1 : 0));
  const note = own.findLast((one) => one.onDay <= onDay) ?? own[0];
  return note === undefined ? null : priceOfGrams(note.price, grams);
}
