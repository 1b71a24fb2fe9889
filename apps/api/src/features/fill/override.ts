import {
  type BagOffer,
  freightMinorUnits,
  goodsMinorUnits,
  splitByWeight,
  type UnitPrice,
} from '@sheafbook/sharing';
import { addFractions, assert, fraction, sumOf } from '@sheafbook/units';
import { fieldProblem } from '../../platform/problem.ts';
import type { BasketAnswer, BuyFill, LineAnswer, PledgeAnswer } from './answer.ts';
import { findTerms } from './guards.ts';
import type { FillInputs, FillQuote } from './inputs.ts';
import type { LineOverride } from './schema.ts';
import { countUnitsWithin } from './to-units.ts';

/**
 * The coordinator's own bags and allotments for some lines, in place of the computed ones. They must fill their bags
 * exactly, keep each pledge between its least and most or leave it out, and leave the common stock within its cap;
 * ceilings and the supplier's minimum are judged by the same guards as a computed fill.
 */
export function overrideFill(inputs: FillInputs, fill: BuyFill, overrides: readonly LineOverride[]): BuyFill {
  const replaced = overrides.map((override, position) =>
    overrideLine(inputs, { fill, override, field: `override.${position}` }),
  );
  const lines = fill.lines.map((line) => replaced.find((known) => known.lineId === line.lineId) ?? line);
  const touched = new Set(replaced.map((line) => line.quoteId));
  const baskets = fill.baskets.map((basket) =>
    touched.has(basket.quoteId) ? totalBasket(inputs, basket, lines) : basket,
  );
  return { ...fill, baskets, lines: lines.map((line) => priceLine(line, baskets)) };
}

type Place = { readonly fill: BuyFill; readonly override: LineOverride; readonly field: string };

function overrideLine(inputs: FillInputs, { fill, override, field }: Place): LineAnswer {
  const line = fill.lines.find((known) => known.lineId === override.buyLineId);
  const facts = inputs.lines.find((known) => known.lineId === override.buyLineId);
  if (!line || !facts)
    throw fieldProblem('thing-not-found', `${field}.buyLineId`, 'This buy has no such line.');
  const quote = inputs.quotes.find((known) => known.quoteId === line.quoteId);
  if (!quote) throw fieldProblem('quote-not-valid', `${field}.buyLineId`, 'No valid quote offers this food.');
  const counted = countBags(quote, override, field);
  const pledges = line.pledges.map((pledge) => ({ ...pledge, units: unitsOf(override, pledge) }));
  checkAllotments(inputs, { line, override, field, pledges });
  const units = sumOf(counted.map(({ offer, bags }) => bags * offer.bagSize));
  const commonUnits = units - sumOf(pledges.map((pledge) => pledge.units));
  const cap = countUnitsWithin(facts.commonCapGrams, facts.massUnit);
  checkCommon({ counted, commonUnits, cap, field });
  const grams = sumOf(counted.map(({ offer, bags }) => bags * offer.bagGrams));
  const parts =
    grams > 0 ? splitByWeight(grams, [...pledges.map((pledge) => pledge.units), commonUnits]) : [];
  const bags = counted.map(({ offer, bags: count }) => ({
    bagOfferId: offer.bagOfferId,
    bags: count,
    goodsMinorUnits: goodsMinorUnits(offer, count),
  }));
  return {
    ...line,
    bags,
    pledges: pledges.map((pledge, position) => ({
      ...pledge,
      grams: parts[position] ?? 0,
      dropped: pledge.units > 0 ? null : (pledge.dropped ?? 'override'),
    })),
    commonUnits,
    commonGrams: parts[pledges.length] ?? 0,
    goodsMinorUnits: sumOf(bags.map((bag) => bag.goodsMinorUnits)),
  };
}

const unitsOf = ({ allotments }: LineOverride, { pledgeId }: PledgeAnswer): number =>
  allotments.find((allotment) => allotment.pledgeId === pledgeId)?.units ?? 0;

function countBags(quote: FillQuote, { buyLineId, bags }: LineOverride, field: string) {
  if (new Set(bags.map((bag) => bag.bagOfferId)).size < bags.length)
    throw fieldProblem('invalid-input', `${field}.bags`, 'A bag size stands here twice.');
  return bags
    .map(({ bagOfferId, bags: count }, position) => {
      const offer: BagOffer | undefined = quote.offers
        .filter((known) => known.lineId === buyLineId)
        .find((known) => known.bagOfferId === bagOfferId);
      const at = `${field}.bags.${position}`;
      if (!offer)
        throw fieldProblem('thing-not-found', `${at}.bagOfferId`, 'The quote has no such bag for this food.');
      if (count > (offer.mostBags ?? count))
        throw fieldProblem(
          'quote-not-valid',
          `${at}.bags`,
          `The supplier has ${offer.mostBags} of these at most.`,
        );
      return { offer, bags: count };
    })
    .filter(({ bags: count }) => count > 0);
}

function checkAllotments(
  inputs: FillInputs,
  at: { line: LineAnswer; override: LineOverride; field: string; pledges: readonly PledgeAnswer[] },
): void {
  const { line, override, field } = at;
  if (new Set(override.allotments.map((allotment) => allotment.pledgeId)).size < override.allotments.length)
    throw fieldProblem('invalid-input', `${field}.allotments`, 'A pledge stands here twice.');
  for (const [position, { pledgeId, units }] of override.allotments.entries()) {
    const name = `${field}.allotments.${position}`;
    const pledge = line.pledges.find((known) => known.pledgeId === pledgeId);
    if (!pledge)
      throw fieldProblem('thing-not-found', `${name}.pledgeId`, 'No such pledge stands on this line.');
    const terms = findTerms(inputs, { lineId: line.lineId, quoteId: line.quoteId, pledgeId });
    const isOpen = pledge.dropped !== 'substitute';
    const isWithin = terms && units >= terms.least && units <= terms.most && units % terms.step === 0;
    if (units > 0 && !(isOpen && isWithin)) {
      const message = isOpen
        ? 'Nothing, or whole steps between the pledge’s least and most.'
        : 'This pledge is served by its substitute.';
      throw fieldProblem('does-not-add-up', `${name}.units`, message);
    }
  }
}

function checkCommon(at: {
  counted: readonly { offer: BagOffer; bags: number }[];
  commonUnits: number;
  cap: number;
  field: string;
}): void {
  const { counted, commonUnits, cap, field } = at;
  if (commonUnits < 0)
    throw fieldProblem(
      'does-not-add-up',
      `${field}.allotments`,
      `The bags hold ${-commonUnits} less than is allotted.`,
    );
  if (commonUnits > cap)
    throw fieldProblem(
      'does-not-add-up',
      `${field}.bags`,
      `${commonUnits} would be left over; common stock takes ${cap}.`,
    );
  if (counted.some(({ offer }) => commonUnits >= offer.bagSize))
    throw fieldProblem(
      'does-not-add-up',
      `${field}.bags`,
      'A whole bag would be bought for the common stock alone.',
    );
}

function totalBasket(inputs: FillInputs, basket: BasketAnswer, lines: readonly LineAnswer[]): BasketAnswer {
  const quote = inputs.quotes.find((known) => known.quoteId === basket.quoteId);
  assert(quote, 'a basket belongs to a quote of the inputs');
  const own = lines.filter((line) => line.quoteId === basket.quoteId);
  const goods = sumOf(own.map((line) => line.goodsMinorUnits));
  const grams = sumOf(own.map(gramsOfLine));
  const isBelow = goods < quote.minimumGoodsMinorUnits || grams < quote.minimumGrams;
  return {
    ...basket,
    goodsMinorUnits: goods,
    freightMinorUnits: freightMinorUnits(quote.freight, goods, grams),
    grams,
    isBelowMinimum: grams > 0 && isBelow,
    certificate: {
      ...basket.certificate,
      isProvenBest: false,
      note: 'set by hand, with a written reason',
      levels: [],
    },
  };
}

const gramsOfLine = (line: LineAnswer): number =>
  line.commonGrams + sumOf(line.pledges.map((pledge) => pledge.grams));

/** The landed price by the same sum as a computed fill: goods per gram and the basket's freight per gram. */
function priceLine(line: LineAnswer, baskets: readonly BasketAnswer[]): LineAnswer {
  const basket = baskets.find((known) => known.quoteId === line.quoteId);
  const grams = gramsOfLine(line);
  if (!basket || grams === 0) return { ...line, landedPrice: null };
  const price = addFractions(
    fraction(line.goodsMinorUnits, grams),
    fraction(basket.freightMinorUnits, basket.grams),
  );
  const landedPrice: UnitPrice = { minorUnits: Number(price.numerator), grams: Number(price.denominator) };
  return { ...line, landedPrice };
}
