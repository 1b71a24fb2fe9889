import { costCurve } from '@sheafbook/sharing';
import { fractionToNumber, GRAMS_PER_UNIT, gramsOfPhysicalUnit, parseMoney } from '@sheafbook/units';
import type { BuyLineBody, Fill, FillLine, Offer, OwnPledge, Quote } from './buy-body.ts';
import { bagOfferOf, freightOf } from './quote-offers.ts';

/** Everything of one food in a buy that its page draws: counted in the line's own unit. */
export type LineFacts = {
  readonly unit: 'lb' | 'kg';
  readonly bagUnits: number;
  readonly stepUnits: number;
  /** What is pledged now, as far as it may be known. */
  readonly standingUnits: number;
  /** What everybody would take at most, where that may be known. */
  readonly mostUnits: number | null;
  readonly jumps: readonly Jump[];
};

/** Where one bag more makes every bag cheaper: a price break, or freight that becomes free. */
export type Jump = {
  readonly fromBags: number;
  readonly isFreeFreight: boolean;
  /** What a bag lands at from there on, with its by-weight share of the order's freight. */
  readonly landed: { readonly minorUnits: number; readonly grams: number };
};

export function unitsOf(grams: number, unit: 'lb' | 'kg'): number {
  return Math.round(grams / fractionToNumber(GRAMS_PER_UNIT[unit]));
}

/** Undefined while no quote offers a bag of this food. */
export function lineFactsOf(
  line: BuyLineBody,
  { lines, baskets }: Pick<Fill, 'lines' | 'baskets'>,
  quotes: readonly Quote[],
): LineFacts | undefined {
  const fill = lines.find(({ lineId }) => lineId === line.id);
  const offer = offerOf(line, fill, quotes);
  if (!offer) return undefined;
  const quote = quotes.find(({ offers }) => offers.some(({ id }) => id === offer.id));
  const { pledged } = line;
  const unit = line.massUnit === 'kg' ? 'kg' : 'lb';
  const bags = (fill?.bags ?? []).reduce((sum, bag) => sum + bag.bags, 0);
  const filledUnits = bags * offer.bagSize - (fill?.commonUnits ?? 0);
  const wantedUnits = fill?.tips?.wantedUnits ?? null;
  return {
    unit,
    bagUnits: offer.bagSize,
    stepUnits: line.stepUnits,
    standingUnits: wantedUnits ?? Math.max(filledUnits, 0),
    mostUnits: pledged.isShown ? unitsOf(pledged.mostGrams, unit) : null,
    jumps: quote ? jumpsOf(offer, quote, { fill, baskets }) : [],
  };
}

/** No picture shows more sacks than this. */
const MOST_BAGS = 60;

/** The jumps of a bag within its whole order: what else is ordered there moves freight, and bears its part of it. */
function jumpsOf(
  offer: Offer,
  quote: Quote,
  at: { fill: FillLine | undefined; baskets: Fill['baskets'] },
): Jump[] {
  const basket = at.baskets.find(({ quoteId }) => quoteId === quote.id);
  const own = at.fill?.bags.find(({ bagOfferId }) => bagOfferId === offer.id);
  const others = {
    goodsMinorUnits: (basket?.goodsMinorUnits ?? 0) - (own?.goodsMinorUnits ?? 0),
    grams: (basket?.grams ?? 0) - (own?.bags ?? 0) * offer.bagGrams,
  };
  const toBags = Math.min(offer.mostBags ?? MOST_BAGS, MOST_BAGS);
  return costCurve({ offer: bagOfferOf(offer), freight: freightOf(quote), others, fromBags: 1, toBags })
    .filter(({ bags, isBreak, isFreeFrom }) => bags > 1 && (isBreak || isFreeFrom))
    .map(({ bags, isFreeFrom, perBagMinorUnits }) => ({
      fromBags: bags,
      isFreeFreight: isFreeFrom,
      landed: { minorUnits: perBagMinorUnits, grams: offer.bagGrams },
    }));
}

function offerOf(line: BuyLineBody, fill: FillLine | undefined, quotes: readonly Quote[]): Offer | undefined {
  const offers = quotes
    .filter((quote) => !quote.isWithdrawn && (line.quoteId === null || quote.id === line.quoteId))
    .flatMap((quote) => quote.offers)
    .filter((offer) => offer.buyLineId === line.id);
  return offers.find((offer) => offer.id === fill?.bags[0]?.bagOfferId) ?? offers[0];
}

/** Sacks as they stand: full ones, what lies in the next, and what that one still lacks. */
export function sacksOf(standingUnits: number, bagUnits: number) {
  const full = Math.floor(standingUnits / bagUnits);
  const partUnits = standingUnits - full * bagUnits;
  return { full, partUnits, lackUnits: partUnits === 0 ? 0 : bagUnits - partUnits };
}

export type Wish = {
  readonly least: string;
  readonly wanted: string;
  readonly most: string;
  readonly wholeBags: boolean;
  /** The highest landed price of one unit, as money; empty is none. */
  readonly ceiling: string;
  /** The line that serves instead where the ceiling keeps this one out; empty is none. */
  readonly substitute: string;
};

/** A pledge as it is typed: what stands, or one bag to begin with. */
export function wishOf(
  pledge: OwnPledge | undefined,
  facts: LineFacts,
  money: (minorUnits: number) => string,
): Wish {
  const say = (grams: number) => String(unitsOf(grams, facts.unit));
  if (!pledge)
    return {
      least: '0',
      wanted: String(facts.bagUnits),
      most: String(facts.bagUnits * 2),
      wholeBags: false,
      ceiling: '',
      substitute: '',
    };
  return {
    least: say(pledge.leastGrams),
    wanted: say(pledge.wantedGrams),
    most: say(pledge.mostGrams),
    wholeBags: pledge.wholeBags,
    ceiling: ceilingText(pledge, facts.unit, money),
    substitute: pledge.substituteLineId ?? '',
  };
}

/** A ceiling for one unit, as money. One that was named for another mass is shown to the nearest coin. */
function ceilingText(
  { ceilingMinorUnits, ceilingPerGrams }: OwnPledge,
  unit: 'lb' | 'kg',
  money: (minorUnits: number) => string,
): string {
  if (ceilingMinorUnits === null || ceilingPerGrams === null) return '';
  const grams = gramsOfPhysicalUnit(1, unit);
  return money(Math.round((ceilingMinorUnits * grams) / ceilingPerGrams));
}

/**
 * The ceiling and the substitute as they are sent. A ceiling that was not touched goes back as it came, so that one
 * named for ten pounds is not rounded to one.
 */
export function limitsOf(
  wish: Pick<Wish, 'ceiling' | 'substitute'>,
  start: Pick<Wish, 'ceiling'>,
  at: { pledge: OwnPledge | undefined; unit: 'lb' | 'kg'; currency: string },
) {
  const substituteLineId = wish.substitute === '' ? null : wish.substitute;
  const none = { limits: { substituteLineId }, isCeilingWrong: false };
  if (wish.ceiling.trim() === '') return none;
  const { pledge, unit, currency } = at;
  const { ceilingMinorUnits: minorUnits, ceilingPerGrams: grams } = pledge ?? {};
  if (wish.ceiling === start.ceiling && minorUnits && grams)
    return {
      limits: { substituteLineId, ceilingMinorUnits: minorUnits, ceilingPerGrams: grams },
      isCeilingWrong: false,
    };
  const amount = parseMoney(wish.ceiling, currency);
  if ('problem' in amount || amount.minorUnits === 0) return { ...none, isCeilingWrong: true };
  return {
    limits: {
      substituteLineId,
      ceilingMinorUnits: amount.minorUnits,
      ceilingPerGrams: gramsOfPhysicalUnit(1, unit),
    },
    isCeilingWrong: false,
  };
}
