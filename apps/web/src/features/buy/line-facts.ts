import { fractionToNumber, GRAMS_PER_UNIT } from '@sheafbook/units';
import type { BuyLineBody, FillLine, Offer, OwnPledge, Quote } from './buy-body.ts';

/** Everything of one food in a buy that its page draws: counted in the line's own unit. */
export type LineFacts = {
  readonly unit: 'lb' | 'kg';
  readonly bagUnits: number;
  readonly stepUnits: number;
  /** What is pledged now, as far as it may be known. */
  readonly standingUnits: number;
  /** What everybody would take at most, where that may be known. */
  readonly mostUnits: number | null;
  readonly jumps: readonly { readonly fromBags: number; readonly bagPriceMinorUnits: number }[];
};

export function unitsOf(grams: number, unit: 'lb' | 'kg'): number {
  return Math.round(grams / fractionToNumber(GRAMS_PER_UNIT[unit]));
}

/** Undefined while no quote offers a bag of this food. */
export function lineFactsOf(
  line: BuyLineBody,
  fill: FillLine | undefined,
  quotes: readonly Quote[],
): LineFacts | undefined {
  const offer = offerOf(line, fill, quotes);
  if (!offer) return undefined;
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
    jumps: offer.breaks.filter(({ fromBags }) => fromBags > 1),
  };
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
};

/** A pledge as it is typed: what stands, or one bag to begin with. */
export function wishOf(pledge: OwnPledge | undefined, facts: LineFacts): Wish {
  const say = (grams: number) => String(unitsOf(grams, facts.unit));
  if (!pledge)
    return { least: '0', wanted: String(facts.bagUnits), most: String(facts.bagUnits * 2), wholeBags: false };
  return {
    least: say(pledge.leastGrams),
    wanted: say(pledge.wantedGrams),
    most: say(pledge.mostGrams),
    wholeBags: pledge.wholeBags,
  };
}
