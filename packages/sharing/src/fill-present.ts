import { assert, sumOf } from '@sheafbook/units';
import type { Drops } from './fill-alone.ts';
import type { FillAllotment, FillAnswer, FilledLine } from './fill-answer.ts';
import { sortOffers } from './fill-bag-counts.ts';
import { isWithinCeiling, landedPrice, type OrderTotals, totalOrder } from './fill-ceilings.ts';
import type { Choice, ChoicePart } from './fill-search.ts';
import type { Survey } from './fill-survey.ts';
import { splitByWeight } from './split-by-weight.ts';
import type { UnitPrice } from './unit-price.ts';

/** Spells a settled choice out, line by line, in the order of the request. */
export function presentFill(survey: Survey, choice: Choice, drops: Drops): Omit<FillAnswer, 'certificate'> {
  const totals = totalOrder(
    survey.request,
    choice.parts.map((part) => part.count),
  );
  const filled = choice.parts.map((part, index) => {
    const outpriced = listOutpriced(survey, { part, index, dropped: drops[index] ?? new Set(), totals });
    return presentLine(part, totals, outpriced);
  });
  const byId = new Map(filled.map((line) => [line.lineId, line]));
  return {
    lines: survey.request.lines.flatMap((line) => byId.get(line.lineId) ?? []),
    goodsMinorUnits: totals.goods,
    freightMinorUnits: totals.freight,
    grams: totals.grams,
  };
}

/**
 * The positions of the pledges whose ceiling keeps them out: at the landed price, or, when the line is not
 * bought, at every price that any bag count could have.
 */
function listOutpriced(
  survey: Survey,
  at: { part: ChoicePart; index: number; dropped: ReadonlySet<number>; totals: OrderTotals },
): Set<number> {
  const { line, count } = at.part;
  const isBought = count.bagsInAll > 0;
  const bought = (survey.lines[at.index]?.counts ?? []).filter((known) => known.count.bagsInAll > 0);
  const hopefuls = new Set(bought.flatMap((known) => known.allowed));
  const isOutpriced = (position: number): boolean => {
    const pledge = line.pledges[position];
    if (!pledge || at.dropped.has(position)) return true;
    if (isBought) return !isWithinCeiling(pledge, landedPrice(count, at.totals));
    return bought.length > 0 && !hopefuls.has(position);
  };
  return new Set([...line.pledges.keys()].filter(isOutpriced));
}

function presentLine(part: ChoicePart, totals: OrderTotals, outpriced: ReadonlySet<number>): FilledLine {
  const { line, count, allotted } = part;
  const commonUnits = count.units - sumOf(allotted.units);
  const isBought = count.bagsInAll > 0;
  const grams = isBought ? splitByWeight(count.grams, [...allotted.units, commonUnits]) : [];
  const allotments = line.pledges.map(({ pledgeId, ownerId }, position): FillAllotment => {
    const units = allotted.units[position] ?? 0;
    const reason = outpriced.has(position) ? 'ceiling' : isBought ? 'does-not-fit' : 'line-not-bought';
    return { pledgeId, ownerId, units, grams: grams[position] ?? 0, dropped: units > 0 ? null : reason };
  });
  const costLevels = line.offers.length > 1 ? [count.goods, count.bagsInAll] : [];
  return {
    lineId: line.lineId,
    bags: presentBags(part),
    allotments,
    commonUnits,
    commonGrams: grams[line.pledges.length] ?? 0,
    goodsMinorUnits: count.goods,
    key: [...allotted.key, ...costLevels],
    landedPrice: isBought ? presentPrice(part, totals) : null,
  };
}

function presentBags({ line, count }: ChoicePart): FilledLine['bags'] {
  const bagsById = new Map(
    sortOffers(line).map((offer, position) => [offer.bagOfferId, count.bags[position] ?? 0]),
  );
  return line.offers.map(({ bagOfferId }) => ({ bagOfferId, bags: bagsById.get(bagOfferId) ?? 0 }));
}

function presentPrice({ count }: ChoicePart, totals: OrderTotals): UnitPrice {
  const price = landedPrice(count, totals);
  const unitPrice = { minorUnits: Number(price.numerator), grams: Number(price.denominator) };
  assert(Number.isSafeInteger(unitPrice.minorUnits), 'a landed price must stay exact');
  assert(Number.isSafeInteger(unitPrice.grams), 'a landed price must stay exact');
  return unitPrice;
}
