import { type FillLine, type FillRequest, fillBags, goodsMinorUnits } from '@sheafbook/sharing';
import type { Solver } from '@sheafbook/solve';
import { assert } from '@sheafbook/units';
import type { BasketAnswer, BuyFill, DropReason, LineAnswer, PledgeAnswer, Substitution } from './answer.ts';
import { chooseQuotes } from './choose-quotes.ts';
import {
  type FillInputs,
  type FillLineFacts,
  type FillPledgeFacts,
  type FillQuote,
  sortPledges,
} from './inputs.ts';
import { countUnitsWithin, pledgeInUnits } from './to-units.ts';

/** Where a pledge stands while the fill looks for its place. It leaves a place for good, so the search ends. */
type Place = 'own-line' | 'substitute' | 'nowhere';
type Placed = { readonly pledge: FillPledgeFacts; readonly place: Place };

/**
 * Fills a buy: one request of whole bags for each supplier, solved to its proven best. A pledge that its ceiling keeps
 * out is tried on its substitute line, and if it gets nothing there either it is left out and the bags are filled
 * again; the set of pledges on a line only ever shrinks by such a step, so this ends (job map 2.5).
 * Units: line units, grams and minor units. The same inputs give the same answer, byte for byte.
 */
export function fillBuy(inputs: FillInputs, solver: Solver): BuyFill {
  const quoteOfLine = chooseQuotes(inputs);
  let placed = sortPledges(inputs.pledges).map((pledge): Placed => ({ pledge, place: 'own-line' }));
  while (true) {
    const fill = fillPlaced(inputs, { placed, quoteOfLine }, solver);
    const next = placed.map((item) => ({ ...item, place: nextPlace(item, fill, quoteOfLine) }));
    if (next.every((item, position) => item.place === placed[position]?.place)) return fill;
    placed = next;
  }
}

/** A ceiling sends a pledge to its substitute, if that has a quote; a substitute that gave nothing sends it away. */
function nextPlace(
  { pledge, place }: Placed,
  fill: BuyFill,
  quoteOfLine: ReadonlyMap<string, FillQuote>,
): Place {
  if (place === 'nowhere') return place;
  const lineId = place === 'own-line' ? pledge.lineId : pledge.substituteLineId;
  const line = fill.lines.find((answer) => answer.lineId === lineId);
  const dropped = line?.pledges.find((answer) => answer.pledgeId === pledge.pledgeId)?.dropped ?? null;
  if (place === 'substitute') return dropped === null ? place : 'nowhere';
  const hasSubstitute = pledge.substituteLineId !== null && quoteOfLine.has(pledge.substituteLineId);
  return dropped === 'ceiling' && hasSubstitute ? 'substitute' : place;
}

type Assembly = {
  readonly placed: readonly Placed[];
  readonly quoteOfLine: ReadonlyMap<string, FillQuote>;
};

function fillPlaced(inputs: FillInputs, assembly: Assembly, solver: Solver): BuyFill {
  const { placed, quoteOfLine } = assembly;
  const quotes = inputs.quotes.filter((quote) => [...quoteOfLine.values()].includes(quote));
  const filled = quotes.map((quote) => {
    const lines = inputs.lines.filter((line) => quoteOfLine.get(line.lineId) === quote);
    return fillBasket(quote, { lines, placed }, solver);
  });
  const unquoted = inputs.lines
    .filter((line) => !quoteOfLine.has(line.lineId))
    .map((line) => answerUnquoted(line, placed));
  const answers = new Map(
    [...filled.flatMap(({ lines }) => lines), ...unquoted].map((line) => [line.lineId, line]),
  );
  return {
    baskets: filled.map(({ basket }) => basket),
    lines: inputs.lines.flatMap((line) => answers.get(line.lineId) ?? []),
    substitutions: placed.flatMap(({ pledge, place }) => listSubstitution(pledge, place)),
  };
}

function fillBasket(
  quote: FillQuote,
  { lines, placed }: { lines: readonly FillLineFacts[]; placed: readonly Placed[] },
  solver: Solver,
): { readonly basket: BasketAnswer; readonly lines: LineAnswer[] } {
  const { quoteId, supplierId, freight, minimumGoodsMinorUnits, minimumGrams } = quote;
  const request: FillRequest = {
    lines: lines.map((line) => toFillLine(line, quote, placed)),
    freight,
    minimumGoodsMinorUnits,
    minimumGrams,
  };
  const answer = fillBags(request, solver);
  const basket = {
    quoteId,
    supplierId,
    goodsMinorUnits: answer.goodsMinorUnits,
    freightMinorUnits: answer.freightMinorUnits,
    grams: answer.grams,
    isBelowMinimum: answer.grams === 0 && isKeptFromBuying(request, solver),
    certificate: answer.certificate,
  };
  const answered = lines.map((line) => {
    const filled = answer.lines.find(({ lineId }) => lineId === line.lineId);
    assert(filled, 'a fill answers every line');
    const byPledge = new Map(filled.allotments.map((allotment) => [allotment.pledgeId, allotment]));
    const bags = filled.bags
      .filter((bag) => bag.bags > 0)
      .map((bag) => ({ ...bag, goodsMinorUnits: goodsOf(quote, bag) }));
    const pledges = listAnswered(line.lineId, placed, ({ pledge, isHere }) => {
      const allotment = byPledge.get(pledge.pledgeId);
      // A pledge with no step of this quote between its least and most never reached the solver.
      if (!isHere || !allotment) return { units: 0, grams: 0, dropped: isHere ? 'does-not-fit' : 'ceiling' };
      return { units: allotment.units, grams: allotment.grams, dropped: allotment.dropped };
    });
    const { lineId, commonUnits, commonGrams, goodsMinorUnits: goods, landedPrice } = filled;
    return { lineId, quoteId, bags, pledges, commonUnits, commonGrams, goodsMinorUnits: goods, landedPrice };
  });
  return { basket, lines: answered };
}

/** Nothing is bought though something would be if the supplier had no minimum. */
function isKeptFromBuying(request: FillRequest, solver: Solver): boolean {
  if (request.minimumGoodsMinorUnits === 0 && request.minimumGrams === 0) return false;
  return fillBags({ ...request, minimumGoodsMinorUnits: 0, minimumGrams: 0 }, solver).grams > 0;
}

/** Lines of one supplier in different units are filled together all the same: only the last ties then mix them. */
function toFillLine(line: FillLineFacts, quote: FillQuote, placed: readonly Placed[]): FillLine {
  const offers = quote.offers.filter((offer) => offer.lineId === line.lineId);
  const here = placed.filter((item) => lineOf(item) === line.lineId);
  return {
    lineId: line.lineId,
    offers: offers.map(({ lineId: _, ...offer }) => offer),
    pledges: here.flatMap(({ pledge }) => pledgeInUnits(pledge, line, offers) ?? []),
    commonCap: countUnitsWithin(line.commonCapGrams, line.massUnit),
    leastBags: 0,
    mostBags: null,
  };
}

const lineOf = ({ pledge, place }: Placed): string | null =>
  ({ 'own-line': pledge.lineId, substitute: pledge.substituteLineId, nowhere: null })[place];

function goodsOf(quote: FillQuote, { bagOfferId, bags }: { bagOfferId: string; bags: number }): number {
  const offer = quote.offers.find((known) => known.bagOfferId === bagOfferId);
  assert(offer, 'bags are bought of an offer of the quote');
  return goodsMinorUnits(offer, bags);
}

/** Every pledge that was made for a line or came to it as a substitute, in pledge order. */
function listAnswered(
  lineId: string,
  placed: readonly Placed[],
  answerOf: (at: {
    pledge: FillPledgeFacts;
    isHere: boolean;
  }) => Pick<PledgeAnswer, 'units' | 'grams' | 'dropped'>,
): PledgeAnswer[] {
  return placed.flatMap((item) => {
    const { pledge, place } = item;
    const isHere = lineOf(item) === lineId;
    const isSubstitute = pledge.lineId !== lineId;
    if (isSubstitute && !isHere) return [];
    const { units, grams, ...answer } = answerOf({ pledge, isHere });
    const hasMoved = !isSubstitute && place === 'substitute';
    const dropped: DropReason | null = hasMoved ? 'substitute' : answer.dropped;
    const { pledgeId, householdId, wholeBags } = pledge;
    return [{ pledgeId, householdId, units, grams, wholeBags, isSubstitute, dropped }];
  });
}

function answerUnquoted({ lineId }: FillLineFacts, placed: readonly Placed[]): LineAnswer {
  return {
    lineId,
    quoteId: null,
    bags: [],
    pledges: listAnswered(lineId, placed, () => ({ units: 0, grams: 0, dropped: 'no-quote' })),
    commonUnits: 0,
    commonGrams: 0,
    goodsMinorUnits: 0,
    landedPrice: null,
  };
}

function listSubstitution(pledge: FillPledgeFacts, place: Place): Substitution[] {
  const { pledgeId, householdId, lineId: fromLineId, substituteLineId: toLineId } = pledge;
  if (place === 'own-line' || toLineId === null) return [];
  return [{ pledgeId, householdId, fromLineId, toLineId, isServed: place === 'substitute' }];
}
