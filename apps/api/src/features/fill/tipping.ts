import {
  type BagOffer,
  type CostTerms,
  costCurve,
  findTip,
  nextBag,
  shareSaving,
  type Tip,
} from '@sheafbook/sharing';
import { assert, sumOf } from '@sheafbook/units';
import type { BuyFill, LineAnswer } from './answer.ts';
import type { FillInputs, FillQuote } from './inputs.ts';
import { pledgeInUnits } from './to-units.ts';

/** A larger order and what it does; `savings` are those of each owner that is in already, common stock among them. */
export type TipAnswer = {
  readonly bagOfferId: string;
  readonly extraBags: number;
  readonly extraUnits: number;
  readonly bags: number;
  readonly reachesBreak: boolean;
  readonly reachesFreeFreight: boolean;
  readonly extraCostMinorUnits: number;
  readonly savedMinorUnits: number;
  readonly savings: readonly { readonly ownerId: string; readonly minorUnits: number }[];
};

/**
 * What a line's next bag lacks, and what a few more bags would do. `isDeadZone`: a larger order costs no more in all,
 * so this one should not be placed; `freeTip` is that larger order.
 */
export type LineTips = {
  readonly lineId: string;
  readonly wantedUnits: number;
  readonly pledgers: number;
  readonly toNextBagUnits: number;
  readonly overLastBagUnits: number;
  readonly isDeadZone: boolean;
  readonly tip: TipAnswer | null;
  readonly freeTip: TipAnswer | null;
};

/** How far beyond the present order a tip is looked for. */
const MOST_EXTRA_BAGS = 1000;

export function listTips(inputs: FillInputs, fill: BuyFill): LineTips[] {
  return fill.lines.flatMap((line) => {
    const quote = inputs.quotes.find((known) => known.quoteId === line.quoteId);
    return quote ? [tipsOfLine(inputs, { line, quote, fill })] : [];
  });
}

function tipsOfLine(
  inputs: FillInputs,
  { line, quote, fill }: { line: LineAnswer; quote: FillQuote; fill: BuyFill },
): LineTips {
  const facts = inputs.lines.find((known) => known.lineId === line.lineId);
  assert(facts, 'a fill answers lines of its inputs');
  const offers = quote.offers.filter((offer) => offer.lineId === line.lineId);
  const pledges = inputs.pledges
    .filter((pledge) => pledge.lineId === line.lineId)
    .flatMap((pledge) => pledgeInUnits(pledge, facts, offers) ?? []);
  const next = nextBag({ pledges, offers });
  const tips = offers.map((offer) => tipsOfOffer(inputs, { line, quote, fill, offer }));
  return {
    lineId: line.lineId,
    wantedUnits: next.wanted,
    pledgers: new Set(pledges.map((pledge) => pledge.ownerId)).size,
    toNextBagUnits: next.toFill,
    overLastBagUnits: next.toDrop,
    isDeadZone: tips.some((found) => found.isDeadZone),
    tip: smallest(tips.map((found) => found.tip)),
    freeTip: smallest(tips.map((found) => found.freeTip)),
  };
}

/** Of several bag sizes, the tip that asks for the least mass; the offers' own order decides between equal ones. */
function smallest(tips: readonly (TipAnswer | null)[]): TipAnswer | null {
  const found = tips.flatMap((tip) => tip ?? []);
  return found.toSorted((a, b) => a.extraUnits - b.extraUnits)[0] ?? null;
}

type OfferPlace = { line: LineAnswer; quote: FillQuote; fill: BuyFill; offer: BagOffer };

function tipsOfOffer(inputs: FillInputs, place: OfferPlace) {
  const { line, offer } = place;
  const bags = line.bags.find((bag) => bag.bagOfferId === offer.bagOfferId)?.bags ?? 0;
  if (bags === 0) return { isDeadZone: false, tip: null, freeTip: null };
  const terms = costTermsOf(place);
  const upToBags = bags + farthestJump(terms, bags);
  const { tip, freeTip } = findTip({ ...terms, committedBags: bags, upToBags });
  const [row] = costCurve({ ...terms, fromBags: bags, toBags: bags });
  const answer = (found: Tip | null) => found && presentTip(inputs, found, place);
  return { isDeadZone: row?.isDeadZone ?? false, tip: answer(tip), freeTip: answer(freeTip) };
}

/** The other lines and bag sizes of the same order move freight and bear their part of it. */
function costTermsOf({ line, quote, fill, offer }: OfferPlace): CostTerms {
  const ordered = fill.lines
    .filter((known) => known.quoteId === quote.quoteId)
    .flatMap((known) => known.bags.map((bag) => ({ ...bag, lineId: known.lineId })))
    .filter((bag) => bag.lineId !== line.lineId || bag.bagOfferId !== offer.bagOfferId);
  const gramsOf = (bagOfferId: string) =>
    quote.offers.find((known) => known.bagOfferId === bagOfferId)?.bagGrams ?? 0;
  return {
    offer,
    freight: quote.freight,
    others: {
      goodsMinorUnits: sumOf(ordered.map((bag) => bag.goodsMinorUnits)),
      grams: sumOf(ordered.map((bag) => bag.bags * gramsOf(bag.bagOfferId))),
    },
  };
}

/** Enough extra bags to see the last price break and free freight, within reason. */
function farthestJump({ offer, freight, others }: CostTerms, bags: number): number {
  const lastBreak = offer.breaks.at(-1);
  const missing = (freight.freeFromGoodsMinorUnits ?? 0) - (others?.goodsMinorUnits ?? 0);
  const toFree = lastBreak?.bagPriceMinorUnits ? Math.ceil(missing / lastBreak.bagPriceMinorUnits) : 0;
  const farthest = Math.max(bags + 1, lastBreak?.fromBags ?? 0, toFree) - bags;
  return Math.min(farthest, MOST_EXTRA_BAGS);
}

/** What is in common stock already would find a home first, so so much less need be pledged. */
function presentTip(inputs: FillInputs, tip: Tip, { line, offer }: OfferPlace): TipAnswer {
  const { extraBags, bags, reachesBreak, reachesFreeFreight, extraCostMinorUnits, savedMinorUnits } = tip;
  const awards = [
    ...line.pledges.map(({ householdId, grams }) => ({ ownerId: householdId, grams })),
    { ownerId: inputs.commonOwnerId, grams: line.commonGrams },
  ].filter((award) => award.grams > 0);
  return {
    bagOfferId: offer.bagOfferId,
    extraBags,
    extraUnits: extraBags * offer.bagSize - line.commonUnits,
    bags,
    reachesBreak,
    reachesFreeFreight,
    extraCostMinorUnits,
    savedMinorUnits,
    savings: savedMinorUnits > 0 ? shareSaving(tip, awards) : [],
  };
}
