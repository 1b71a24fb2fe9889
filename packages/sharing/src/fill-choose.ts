import type { Solver } from '@sheafbook/solve';
import { assert } from '@sheafbook/units';
import { boundKey } from './fill-bound.ts';
import type { HopefulLine } from './fill-candidates.ts';
import { totalOrder } from './fill-ceilings.ts';
import { buildChoiceModel, type Item } from './fill-choose-model.ts';
import { type Allotted, allotLine, breakTies } from './fill-levels.ts';
import { compareKeys } from './fill-order.ts';
import type { FillRequest } from './fill-request.ts';
import { type Choice, type ChoicePart, choiceKey } from './fill-search.ts';

/**
 * Picks one bag count for every line by an integer program over all of them, under the supplier's minimum but
 * without ceilings: the five levels, then the cost of the whole order, then its bags, one solve each. It
 * starts from bounds of the keys and makes those exact that it might pick, until it picks exact ones only;
 * since a bound is never above its key, nothing has a smaller key. Between equal keys the solver's own order
 * decides, which is the same every time.
 */
export function chooseTogether(request: FillRequest, lines: readonly HopefulLine[], solver: Solver): Choice {
  let items = lines.map(listItems);
  while (true) {
    const picked = pickItems(request, items, solver);
    const parts = picked.flatMap((item) => (item.allotted ? [{ ...item, allotted: item.allotted }] : []));
    if (parts.length === lines.length) return settleParts(request, parts, solver);
    items = items.map((lineItems, line) => makeExact(lineItems, picked[line], solver));
  }
}

function listItems({ line, counts }: HopefulLine): Item[] {
  return counts.flatMap(({ count, allowed }) => {
    const key = boundKey({ line, count, allowed });
    return key ? [{ line, count, allowed, key }] : [];
  });
}

/** Makes exact what was picked and all that bound no worse, since those would be picked next. */
function makeExact(items: readonly Item[], picked: Item | undefined, solver: Solver): Item[] {
  if (!picked || picked.allotted) return [...items];
  const solved = new Map<string, Allotted | undefined>();
  return items.flatMap((item) => {
    if (item.allotted || compareKeys(item.key, picked.key) > 0) return [item];
    const question = [item.count.units, item.count.mostSpare, ...item.allowed].join(' ');
    if (!solved.has(question)) solved.set(question, allotLine(item, solver));
    const allotted = solved.get(question);
    return allotted ? [{ ...item, key: allotted.key, allotted }] : [];
  });
}

function pickItems(request: FillRequest, items: readonly (readonly Item[])[], solver: Solver): Item[] {
  const { variables, rows, levels, itemAt } = buildChoiceModel(request, items);
  let held = rows;
  let values: readonly number[] = [];
  for (const terms of levels) {
    const costs = variables.map(() => 0);
    for (const { variable, coefficient } of terms) costs[variable] = coefficient;
    const answer = solver.minimise({ variables, rows: held, costs });
    assert(answer.status === 'optimal', 'buying nothing is always possible');
    values = answer.values;
    held = [...held, { terms, least: null, most: answer.objective }];
  }
  return values.flatMap((value, variable) => (value === 1 ? (itemAt[variable] ?? []) : []));
}

function settleParts(request: FillRequest, parts: readonly ChoicePart[], solver: Solver): Choice {
  const counts = parts.map((part) => part.count);
  const { goods, freight } = totalOrder(request, counts);
  const keys = parts.map((part) => part.allotted.key);
  return {
    key: choiceKey({ keys, counts }, goods + freight),
    parts: parts.map((part) => {
      return { ...part, allotted: { ...part.allotted, units: breakTies(part, part.allotted, solver) } };
    }),
  };
}
