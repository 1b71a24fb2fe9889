import { assert, assertWhole, compareText, sumOf } from '@sheafbook/units';
import { compareKeys } from './fill-order.ts';
import { type BagOffer, goodsMinorUnits } from './price.ts';

/** Whole bags that cover a mass, and what they come to without freight. */
export type Cover = {
  readonly bags: readonly { readonly bagOfferId: string; readonly bags: number }[];
  readonly grams: number;
  readonly goods: number;
};

type Counted = { readonly counts: readonly number[]; readonly grams: number; readonly goods: number };

/**
 * The cheapest whole bags that hold at least some grams; more than needed when a price break makes that
 * cheaper.
 * Ties: fewer grams, then fewer bags, then more of the larger size. `undefined` when the bags do not suffice.
 */
export function coverGrams(offers: readonly BagOffer[], grams: number): Cover | undefined {
  assertWhole(grams, 'grams');
  assert(offers.length > 0, 'a quote needs at least one bag offer');
  const sorted = offers.toSorted(
    (a, b) => b.bagGrams - a.bagGrams || compareText(a.bagOfferId, b.bagOfferId),
  );
  let choices: Counted[] = [{ counts: [], grams: 0, goods: 0 }];
  for (const offer of sorted) {
    choices = choices.flatMap((choice) => addOffer(choice, offer, Math.max(0, grams - choice.grams)));
  }
  const covering = choices.filter((choice) => choice.grams >= grams);
  const [best] = covering.toSorted((a, b) => compareKeys(rankOf(a), rankOf(b)));
  if (!best) return undefined;
  const byId = new Map(sorted.map((offer, position) => [offer.bagOfferId, best.counts[position] ?? 0]));
  const bags = offers.map(({ bagOfferId }) => ({ bagOfferId, bags: byId.get(bagOfferId) ?? 0 }));
  return { bags, grams: best.grams, goods: best.goods };
}

const rankOf = ({ counts, grams, goods }: Counted): number[] => [
  goods,
  grams,
  sumOf(counts),
  ...counts.map((bags) => -bags),
];

/** Every number of bags up to enough, and beyond that only the starts of price breaks can be cheaper. */
function addOffer(choice: Counted, offer: BagOffer, missingGrams: number): Counted[] {
  const enough = Math.ceil(missingGrams / offer.bagGrams);
  const breaks = offer.breaks.map((priceBreak) => priceBreak.fromBags).filter((from) => from > enough);
  const upToEnough = Array.from({ length: enough + 1 }, (_, bags) => bags);
  return [...upToEnough, ...breaks]
    .filter((bags) => bags <= (offer.mostBags ?? bags))
    .map((bags) => ({
      counts: [...choice.counts, bags],
      grams: choice.grams + bags * offer.bagGrams,
      goods: choice.goods + goodsMinorUnits(offer, bags),
    }));
}
