import { assert, assertWhole, compareText, sumOf } from '@sheafbook/units';
import { freightMinorUnits } from './freight.ts';
import { addCover, boundOfOrder, costOfOrder, openOrder, type RunningOrder } from './quote-basket-order.ts';
import { type Cover, coverGrams } from './quote-cover.ts';
import { assertSuppliers, type SupplierQuote } from './quote-terms.ts';

/**
 * Which supplier each food comes from, and what each supplier's order costs.
 * Units: grams; minor units. Shape: foods in the order asked for; suppliers that get an order, by name.
 * `assignmentsTried` counts the assignments priced in full; the others were excluded because they
 * cannot cost less.
 * Errors: none.
 */
export type Basket = {
  readonly foods: readonly {
    readonly foodId: string;
    readonly supplierId: string;
    readonly bags: Cover['bags'];
    readonly grams: number;
    readonly goodsMinorUnits: number;
  }[];
  readonly suppliers: readonly SupplierOrder[];
  readonly totalMinorUnits: number;
  readonly assignmentsTried: number;
};

type SupplierOrder = {
  readonly supplierId: string;
  readonly goodsMinorUnits: number;
  readonly freightMinorUnits: number;
  readonly grams: number;
};

/** `supplier` is the position of the quote among the suppliers by name. */
type Option = { readonly quote: SupplierQuote; readonly supplier: number; readonly cover: Cover };

/**
 * The cheapest way to buy some foods, each wholly from one supplier, freight and minimums of each supplier's
 * whole order counted. Every assignment of foods to suppliers is looked at, or excluded by a bound.
 * Units: whole grams wanted of each food. Null when no assignment covers every food and meets every minimum.
 * Ties: foods by name, the supplier whose name sorts first.
 * Errors: AssertionError when there are more than 12 foods or 4 suppliers, a food or supplier comes twice, a
 * quantity is not whole and above 0, or terms make no sense.
 */
export function cheapestBasket(
  wants: readonly { readonly foodId: string; readonly grams: number }[],
  quotes: readonly SupplierQuote[],
): Basket | null {
  assertBasket(wants, quotes);
  const foods = wants.toSorted((a, b) => compareText(a.foodId, b.foodId));
  const suppliers = quotes.toSorted((a, b) => compareText(a.supplierId, b.supplierId));
  const options = foods.map(({ foodId, grams }) => listOptions(suppliers, foodId, grams));
  const found = assignFoods(options, suppliers);
  if (!found) return null;
  const byFood = new Map(foods.map(({ foodId }, position) => [foodId, found.chosen[position]]));
  return {
    foods: wants.flatMap(({ foodId }) => {
      const option = byFood.get(foodId);
      if (!option) return [];
      const { cover, quote } = option;
      return {
        foodId,
        supplierId: quote.supplierId,
        bags: cover.bags,
        grams: cover.grams,
        goodsMinorUnits: cover.goods,
      };
    }),
    suppliers: totalBySupplier(found.chosen),
    totalMinorUnits: found.total,
    assignmentsTried: found.tried,
  };
}

function listOptions(suppliers: readonly SupplierQuote[], foodId: string, grams: number): Option[] {
  return suppliers.flatMap((quote, supplier) => {
    const food = quote.foods.find((quoted) => quoted.foodId === foodId);
    const cover = food && coverGrams(food.offers, grams);
    return cover ? [{ quote, supplier, cover }] : [];
  });
}

/**
 * Foods one after the other, suppliers by name. A start is given up when its goods, the least goods of the
 * other foods and the least freight of the suppliers that it uses already reach the best total.
 */
function assignFoods(options: readonly (readonly Option[])[], suppliers: readonly SupplierQuote[]) {
  const leastGoods = options.map((choices) => Math.min(...choices.map((choice) => choice.cover.goods)));
  const leastFrom = [...options, []].map((_, position) => sumOf(leastGoods.slice(position)));
  const orders = suppliers.map((quote) => openOrder(quote, coversOf(options, quote)));
  const chosen: Option[] = [];
  let best: { readonly chosen: readonly Option[]; readonly total: number } | undefined;
  let tried = 0;
  const assign = (depth: number): void => {
    const bound = sumOrders(orders, boundOfOrder) + (leastFrom[depth] ?? 0);
    if (best && bound >= best.total) return;
    const choices = options[depth];
    if (!choices) {
      tried += 1;
      const total = sumOrders(orders, costOfOrder);
      if (total < (best?.total ?? Number.POSITIVE_INFINITY)) best = { chosen: [...chosen], total };
      return;
    }
    for (const option of choices) {
      const order = orders[option.supplier];
      assert(order, 'an option names its supplier');
      addCover(order, option.cover, 1);
      chosen[depth] = option;
      assign(depth + 1);
      addCover(order, option.cover, -1);
    }
  };
  assign(0);
  return best && { ...best, tried };
}

function totalBySupplier(chosen: readonly Option[]): SupplierOrder[] {
  const quotes = [...new Set(chosen.map((option) => option.quote))];
  return quotes
    .toSorted((a, b) => compareText(a.supplierId, b.supplierId))
    .map((quote) => {
      const covers = chosen.filter((option) => option.quote === quote).map((option) => option.cover);
      const goodsMinorUnits = sumOf(covers.map((cover) => cover.goods));
      const grams = sumOf(covers.map((cover) => cover.grams));
      const freight = freightMinorUnits(quote.freight, goodsMinorUnits, grams);
      return { supplierId: quote.supplierId, goodsMinorUnits, freightMinorUnits: freight, grams };
    });
}

function coversOf(options: readonly (readonly Option[])[], quote: SupplierQuote): Cover[] {
  const own = options.flat().filter((option) => option.quote === quote);
  return own.map((option) => option.cover);
}

function sumOrders(orders: readonly RunningOrder[], amount: (order: RunningOrder) => number): number {
  let sum = 0;
  for (const order of orders) sum += amount(order);
  return sum;
}

function assertBasket(
  wants: readonly { readonly foodId: string; readonly grams: number }[],
  quotes: readonly SupplierQuote[],
): void {
  assertSuppliers(quotes);
  assert(wants.length >= 1 && wants.length <= 12, 'a basket holds 1 to 12 foods');
  assert(quotes.length <= 4, 'a basket is bought from at most 4 suppliers');
  const ids = wants.map((want) => want.foodId);
  assert(new Set(ids).size === ids.length, 'a food stands in a basket once');
  for (const { grams } of wants) {
    assertWhole(grams, 'grams');
    assert(grams > 0, 'a basket wants more than 0 grams of each food');
  }
}
