import { assert, assertWhole, divideFractions, fraction, roundFraction } from '@sheafbook/units';
import { costOfBags, isBreak, isFreeFrom } from './cost-of-bags.ts';
import type { CostTerms } from './cost-terms.ts';
import { type BagOffer, goodsMinorUnits } from './price.ts';

/**
 * What a number of bags costs.
 * Units: bags; minor units. Shape: freight is that of the whole order; `totalMinorUnits` = goods of these
 * bags + freight; `perBagMinorUnits` counts only the bags' by-weight share of freight, rounded, a half up;
 * `isDeadZone`: some larger number of bags costs no more, so never order this one; `isBreak`: a price break
 * begins here; `isFreeFrom`: freight becomes free here.
 * Errors: none.
 */
export type CostRow = {
  readonly bags: number;
  readonly goodsMinorUnits: number;
  readonly freightMinorUnits: number;
  readonly totalMinorUnits: number;
  readonly perBagMinorUnits: number;
  readonly isDeadZone: boolean;
  readonly isBreak: boolean;
  readonly isFreeFrom: boolean;
};

/**
 * The cost of each number of bags in a range, with price breaks, free freight and dead zones marked.
 * Units: whole bags; minor units. Errors: AssertionError when a number is not whole, the range is empty or
 * begins at 0, or the terms make no sense.
 */
export function costCurve(
  terms: CostTerms & { readonly fromBags: number; readonly toBags: number },
): CostRow[] {
  const { fromBags, toBags } = terms;
  assertWhole(fromBags, 'fromBags');
  assertWhole(toBags, 'toBags');
  assert(fromBags >= 1, 'a cost curve begins at one bag or more');
  assert(fromBags <= toBags, 'a cost curve needs a range of bags');
  return Array.from({ length: toBags - fromBags + 1 }, (_, step) => costRow(terms, fromBags + step));
}

function costRow(terms: CostTerms, bags: number): CostRow {
  const { goods, freight, total, landed } = costOfBags(terms, bags);
  return {
    bags,
    goodsMinorUnits: goods,
    freightMinorUnits: freight,
    totalMinorUnits: total,
    perBagMinorUnits: Number(roundFraction(divideFractions(landed, fraction(bags)))),
    isDeadZone: isDeadZone(terms, bags),
    isBreak: isBreak(terms, bags),
    isFreeFrom: isFreeFrom(terms, bags),
  };
}

/**
 * Between two jumps the cost only rises with the bags, so a cheaper larger order, if there is one, stands at
 * a jump or is the very next.
 */
function isDeadZone(terms: CostTerms, bags: number): boolean {
  const most = terms.offer.mostBags ?? Number.POSITIVE_INFINITY;
  const { total } = costOfBags(terms, bags);
  const larger = [bags + 1, ...listJumps(terms)].filter((count) => count > bags && count <= most);
  return larger.some((count) => costOfBags(terms, count).total <= total);
}

/**
 * Where the cost may fall or leap: price breaks, the first bags that reach free freight, and freight steps.
 */
function listJumps({ offer, freight, others }: CostTerms): number[] {
  const starts = offer.breaks.map((priceBreak) => priceBreak.fromBags);
  const threshold = (freight.freeFromGoodsMinorUnits ?? 0) - (others?.goodsMinorUnits ?? 0);
  const free = starts.flatMap((from, position) => {
    const to = (starts[position + 1] ?? Number.POSITIVE_INFINITY) - 1;
    return firstBagsWorth(offer, { from, to, worth: threshold }) ?? [];
  });
  const steps = freight.steps.map((step) =>
    Math.ceil((step.fromGrams - (others?.grams ?? 0)) / offer.bagGrams),
  );
  return [...starts, ...free, ...steps];
}

/** The first bags within one price step whose goods are worth so much; goods only rise within a step. */
function firstBagsWorth(
  offer: BagOffer,
  { from, to, worth }: { from: number; to: number; worth: number },
): number | undefined {
  const price = offer.breaks.findLast((priceBreak) => priceBreak.fromBags <= from)?.bagPriceMinorUnits ?? 0;
  const missing = worth - goodsMinorUnits(offer, from);
  if (missing <= 0) return from;
  if (price === 0) return undefined;
  const bags = from + Math.ceil(missing / price); // one bag more adds one price, in both kinds of breaks
  return bags <= to ? bags : undefined;
}
