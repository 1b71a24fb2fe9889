import { compareText, sumOf } from '@sheafbook/units';
import { compareKeys } from './fill-order.ts';
import type { FillLine } from './fill-request.ts';
import { type BagOffer, goodsMinorUnits } from './price.ts';

/** One choice of bags for a line, everything about it that does not depend on who gets what. */
export type BagCount = {
  /** Bags of each offer, in the order of `sortOffers`. */
  readonly bags: readonly number[];
  readonly bagsInAll: number;
  readonly units: number;
  readonly grams: number;
  readonly goods: number;
  /**
   * The most unfilled units: within the common cap, and less than any bag bought, so that no bag is bought in
   * vain.
   */
  readonly mostSpare: number;
};

type Partial = Omit<BagCount, 'mostSpare'> & { readonly smallest: number };

/** Above this many choices for one line, equal masses in equally many bags are merged into the cheapest. */
const MOST_BAG_COUNTS = 100_000;

/** The larger bag first, then by name: an order that does not depend on how the offers were typed in. */
export function sortOffers(line: FillLine): BagOffer[] {
  return line.offers.toSorted((a, b) => b.bagSize - a.bagSize || compareText(a.bagOfferId, b.bagOfferId));
}

/**
 * Lists every bag count that could serve a line, nothing bought included.
 * `isComplete` is false when so many exist that only the cheapest of each mass and number of bags are listed.
 */
export function listBagCounts(line: FillLine): { counts: BagCount[]; isComplete: boolean } {
  const complete = extendByOffers(line, { isMerging: false });
  const partials = complete ?? extendByOffers(line, { isMerging: true }) ?? [];
  const mostWanted = sumOf(line.pledges.map((pledge) => pledge.most));
  const counts = partials
    .map(({ smallest, ...partial }) => ({ ...partial, mostSpare: spareOf(line, smallest) }))
    .filter((count) => count.units <= mostWanted + count.mostSpare)
    .filter((count) => count.bagsInAll === 0 || isWithinBagLimits(line, count.bagsInAll));
  return { counts, isComplete: complete !== undefined };
}

function spareOf(line: FillLine, smallest: number): number {
  return Number.isFinite(smallest) ? Math.min(line.commonCap, smallest - 1) : 0;
}

function isWithinBagLimits({ leastBags, mostBags }: FillLine, bagsInAll: number): boolean {
  return leastBags <= bagsInAll && bagsInAll <= (mostBags ?? Number.POSITIVE_INFINITY);
}

function extendByOffers(line: FillLine, { isMerging }: { isMerging: boolean }): Partial[] | undefined {
  const mostUnits = sumOf(line.pledges.map((pledge) => pledge.most)) + line.commonCap;
  const nothing = { bags: [], bagsInAll: 0, units: 0, grams: 0, goods: 0 };
  let partials: Partial[] = [{ ...nothing, smallest: Number.POSITIVE_INFINITY }];
  for (const offer of sortOffers(line)) {
    const extended: Partial[] = [];
    for (const partial of partials) {
      extended.push(...extendByOffer(partial, offer, mostUnits));
      if (!isMerging && extended.length > MOST_BAG_COUNTS) return undefined;
    }
    partials = isMerging ? mergeCheapest(extended) : mergeTwins(extended, line.leastBags);
  }
  return partials;
}

function extendByOffer(partial: Partial, offer: BagOffer, mostUnits: number): Partial[] {
  const room = Math.floor((mostUnits - partial.units) / offer.bagSize);
  const most = Math.min(room, offer.mostBags ?? room);
  return Array.from({ length: most + 1 }, (_, step) => {
    const bags = most - step;
    return {
      bags: [...partial.bags, bags],
      bagsInAll: partial.bagsInAll + bags,
      units: partial.units + bags * offer.bagSize,
      grams: partial.grams + bags * offer.bagGrams,
      goods: partial.goods + goodsMinorUnits(offer, bags),
      smallest: bags > 0 ? Math.min(partial.smallest, offer.bagSize) : partial.smallest,
    };
  });
}

/**
 * Equal in mass and cost: the one with fewer bags is better whatever else is ordered, so no answer is lost.
 * The number of bags still counts while a least number must be reached.
 */
function mergeTwins(partials: readonly Partial[], leastBags: number): Partial[] {
  return mergeBy(partials, ({ units, smallest, goods, grams, bagsInAll }) =>
    [units, smallest, goods, grams, leastBags > 0 ? bagsInAll : 0].join(' '),
  );
}

/** Equal in mass and number of bags: the cheaper one, which is better unless a dearer order is wanted. */
function mergeCheapest(partials: readonly Partial[]): Partial[] {
  return mergeBy(partials, ({ units, smallest, bagsInAll }) => [units, smallest, bagsInAll].join(' '));
}

function mergeBy(partials: readonly Partial[], groupOf: (partial: Partial) => string): Partial[] {
  const best = new Map<string, Partial>();
  const rankOf = ({ goods, bagsInAll, bags }: Partial) => [goods, bagsInAll, ...bags.map((count) => -count)];
  for (const partial of partials) {
    const known = best.get(groupOf(partial));
    if (!known || compareKeys(rankOf(partial), rankOf(known)) < 0) best.set(groupOf(partial), partial);
  }
  return [...best.values()];
}
