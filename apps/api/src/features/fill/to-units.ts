import type { BagOffer, FillPledge } from '@sheafbook/sharing';
import {
  assert,
  countFromGrams,
  divideFractions,
  floorFraction,
  fraction,
  GRAMS_PER_UNIT,
  roundFraction,
} from '@sheafbook/units';
import type { FillLineFacts, FillPledgeFacts } from './inputs.ts';

/**
 * The whole line units that a pledge's grams stand for. A pledge of two 50 lb bags is 45,360 g and one of 100 lb is
 * 45,359 g; both are 100 (ledger-notes 6.14), which is why the nearest count is taken.
 */
function countNearestUnits(grams: number, massUnit: 'lb' | 'kg'): number {
  return Number(roundFraction(divideFractions(fraction(grams), GRAMS_PER_UNIT[massUnit])));
}

/** The whole line units within a cap; a cap that was typed in that unit counts in full though its grams were rounded. */
export function countUnitsWithin(grams: number, massUnit: 'lb' | 'kg'): number {
  const typed = countFromGrams(grams, massUnit);
  return typed ?? Number(floorFraction(divideFractions(fraction(grams), GRAMS_PER_UNIT[massUnit])));
}

/**
 * A pledge in the line's own units and steps. A share of a bag steps by the line's step, a whole-bag pledge by a bag
 * size: the largest that all three amounts are multiples of, else the smallest. Amounts off the step (a substitute
 * line, or a quote with other bags) are drawn together: least up, most down. Undefined when no step lies between.
 */
export function pledgeInUnits(
  pledge: FillPledgeFacts,
  line: Pick<FillLineFacts, 'massUnit' | 'stepUnits'>,
  offers: readonly BagOffer[],
): FillPledge | undefined {
  const [least, wanted, most] = [pledge.leastGrams, pledge.wantedGrams, pledge.mostGrams].map((grams) =>
    countNearestUnits(grams, line.massUnit),
  );
  assert(least !== undefined && wanted !== undefined && most !== undefined, 'a pledge has three amounts');
  const step = pledge.wholeBags ? wholeBagStep(offers, [least, wanted, most]) : line.stepUnits;
  const lowest = Math.ceil(least / step) * step;
  const highest = Math.floor(most / step) * step;
  if (highest === 0 || lowest > highest) return undefined;
  const nearest = Math.round(wanted / step) * step;
  return {
    pledgeId: pledge.pledgeId,
    ownerId: pledge.householdId,
    least: lowest,
    wanted: Math.min(Math.max(nearest, lowest, step), highest),
    most: highest,
    step,
    ceiling: pledge.ceiling,
  };
}

function wholeBagStep(offers: readonly BagOffer[], amounts: readonly number[]): number {
  const sizes = offers.map((offer) => offer.bagSize).toSorted((a, b) => b - a);
  const fitting = sizes.find((size) => amounts.every((amount) => amount % size === 0));
  const step = fitting ?? sizes.at(-1);
  assert(step, 'a line that is filled has a bag offer');
  return step;
}
