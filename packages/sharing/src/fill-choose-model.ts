import type { IntegerRow, IntegerVariable } from '@sheafbook/solve';
import { sumOf } from '@sheafbook/units';
import type { LineCase } from './fill-case.ts';
import type { Allotted } from './fill-levels.ts';
import type { FillRequest } from './fill-request.ts';

/** A bag count of one line with its key, or a bound of it as long as `allotted` is not known. */
export type Item = LineCase & { readonly key: readonly number[]; readonly allotted?: Allotted };

type Terms = IntegerRow['terms'];

/** `itemAt` names the item of a variable; `levels` are the amounts to make small, one after the other. */
export type ChoiceModel = {
  readonly variables: readonly IntegerVariable[];
  readonly rows: readonly IntegerRow[];
  readonly levels: readonly Terms[];
  readonly itemAt: readonly Item[];
};

/**
 * One unknown of 0 or 1 for each bag count of each line, one of each line chosen; one that says whether
 * anything is bought; and one for each freight step and for free freight, of which one holds when anything is
 * bought.
 */
export function buildChoiceModel(request: FillRequest, items: readonly (readonly Item[])[]): ChoiceModel {
  const itemAt = items.flat();
  const amountOf = (amount: (item: Item) => number): Terms =>
    itemAt.map((item, variable) => ({ variable, coefficient: amount(item) }));
  const goods = amountOf((item) => item.count.goods);
  const grams = amountOf((item) => item.count.grams);
  const isBought = itemAt.length;
  const freight = freightRows(request, { goods, grams, isBought, mostGrams: mostOf(items) });
  const levels = [0, 1, 2, 3, 4].map((level) => amountOf((item) => item.key[level] ?? 0));
  return {
    itemAt,
    variables: Array.from({ length: freight.isFree + 1 }, () => ({ least: 0, most: 1 })),
    rows: [...oneEach(items, isBought), ...minimumRows(request, { goods, grams, isBought }), ...freight.rows],
    levels: [...levels, [...goods, ...freight.cost], amountOf((item) => item.count.bagsInAll)],
  };
}

const mostOf = (items: readonly (readonly Item[])[]): number =>
  sumOf(items.map((line) => line.reduce((most, item) => Math.max(most, item.count.grams), 0)));

/** One bag count a line; and each line's count of no bags unless something is bought. */
function oneEach(items: readonly (readonly Item[])[], isBought: number): IntegerRow[] {
  let first = 0;
  return items.flatMap((line) => {
    const from = first;
    first += line.length;
    const chosen = line.map((_, index) => ({ variable: from + index, coefficient: 1 }));
    const bought = chosen.filter((_, index) => (line[index]?.count.bagsInAll ?? 0) > 0);
    const ifBought = [...bought, { variable: isBought, coefficient: -1 }];
    return [
      { terms: chosen, least: 1, most: 1 },
      { terms: ifBought, least: null, most: 0 },
    ];
  });
}

type Amounts = { readonly goods: Terms; readonly grams: Terms; readonly isBought: number };

function minimumRows(request: FillRequest, { goods, grams, isBought }: Amounts): IntegerRow[] {
  const reach = (terms: Terms, least: number): IntegerRow => ({
    terms: [...terms, { variable: isBought, coefficient: -least }],
    least: 0,
    most: null,
  });
  return [reach(goods, request.minimumGoodsMinorUnits), reach(grams, request.minimumGrams)];
}

/**
 * The freight step in force is the one whose weights hold the order; free freight may be taken when it is
 * earned.
 */
function freightRows({ freight }: FillRequest, amounts: Amounts & { readonly mostGrams: number }) {
  const { goods, grams, isBought, mostGrams } = amounts;
  const steps = freight.steps.map(({ fromGrams, minorUnits }, position) => {
    const nextFrom = freight.steps[position + 1]?.fromGrams ?? Number.POSITIVE_INFINITY;
    const toGrams = Math.min(mostGrams, nextFrom - 1);
    return { variable: isBought + 1 + position, fromGrams, toGrams, minorUnits };
  });
  const isFree = isBought + 1 + steps.length;
  const one = [...steps.map((step) => step.variable), isFree].map((variable) => ({
    variable,
    coefficient: 1,
  }));
  const mayBeFree = steps.length === 0 ? 0 : freight.freeFromGoodsMinorUnits;
  const earned = [...goods, { variable: isFree, coefficient: -(mayBeFree ?? 0) }];
  const rows: IntegerRow[] = [
    { terms: [...one, { variable: isBought, coefficient: -1 }], least: 0, most: 0 },
    { terms: earned, least: 0, most: null },
    { terms: [{ variable: isFree, coefficient: 1 }], least: null, most: mayBeFree === null ? 0 : 1 },
    ...steps.flatMap(({ variable, fromGrams, toGrams }): IntegerRow[] => [
      { terms: [...grams, { variable, coefficient: -fromGrams }], least: 0, most: null },
      { terms: [...grams, { variable, coefficient: mostGrams - toGrams }], least: null, most: mostGrams },
    ]),
  ];
  return {
    rows,
    isFree,
    cost: steps.map(({ variable, minorUnits }) => ({ variable, coefficient: minorUnits })),
  };
}
