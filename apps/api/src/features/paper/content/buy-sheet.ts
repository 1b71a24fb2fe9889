import { LEAST_HOUSEHOLDS } from '@sheafbook/coverage';
import { gramsOfPhysicalUnit } from '@sheafbook/units';
import { presentBuyPage } from '../../buy/present.ts';
import { readBuy } from '../../buy/use-cases.ts';
import { presentFill } from '../../fill/present.ts';
import { readFill } from '../../fill/use-cases.ts';
import type { BuyQuote } from '../../quote/queries.ts';
import { readQuotes } from '../../quote/use-cases.ts';
import { type Block, type Fact, facts, heading, text } from '../content.ts';
import { type Formats, together } from '../formats.ts';
import { asAnyMember, type Desk, type MadePaper, nameOf, subject } from './making.ts';

type Page = ReturnType<typeof presentBuyPage>;
type PageLine = Page['lines'][number];
type Fill = ReturnType<typeof presentFill>;
type Offer = BuyQuote['offers'][number];

/** The sheet of a buy for the wall (job map section 13, paper 1): what any member may read, whoever prints it. */
export async function makeBuySheet({ context, formats }: Desk, buyId: string): Promise<MadePaper> {
  const member = asAnyMember(context);
  const page = presentBuyPage(await readBuy(member, buyId), member.actor);
  const view = await readFill(member, buyId);
  const fill = presentFill(view, member.actor);
  const quotes = (await readQuotes(member, buyId)).map(({ quote }) => quote);
  const { words } = formats;
  const content = {
    about: [page.name],
    blocks: [
      facts([
        { name: words.buySheet.stage, value: words.stages[page.stage] ?? page.stage },
        { name: words.buySheet.closes, value: formats.instantWithZone(new Date(page.gatheringClosesAt)) },
        {
          name: words.buySheet.landsOn,
          value: page.landingOn === null ? words.open : formats.day(page.landingOn),
        },
        { name: words.buySheet.place, value: page.landingPlace || words.open },
        { name: words.buySheet.freightBasis, value: freightBasis(view.rules, formats) },
        { name: words.buySheet.deposit, value: words.buySheet.depositRule(view.rules.depositPercent) },
        { name: words.buySheet.rules, value: words.buySheet.rulesVersion(view.rules.rulesVersion) },
      ]),
      text(words.currencyOnce(formats.currency)),
      ...page.lines.flatMap((line) =>
        lineBlocks(formats, { line, fill, quotes, groupRule: view.rules.splitRule }),
      ),
    ],
  };
  return { subject: subject('buy-sheet', { buyId }), contentWith: () => content };
}

function freightBasis(
  rules: { freightBasis: string; blendNumerator: number; blendDenominator: number },
  { words }: Formats,
): string {
  const { freightBasis: basis, blendNumerator, blendDenominator } = rules;
  return basis === 'blend'
    ? words.blend(blendNumerator, blendDenominator)
    : (words.freightBases[basis] ?? basis);
}

type LineFacts = { line: PageLine; fill: Fill; quotes: readonly BuyQuote[]; groupRule: string };

function lineBlocks(formats: Formats, { line, fill, quotes, groupRule }: LineFacts): Block[] {
  const { words } = formats;
  const filled = fill.lines.find((known) => known.lineId === line.id);
  const quoteId = line.quoteId ?? filled?.quoteId;
  const quote = quotes.find((known) => known.quote.quoteId === quoteId);
  const offers = quote?.offers.filter((offer) => offer.buyLineId === line.id) ?? [];
  const rule = line.splitRule ?? groupRule;
  return [
    heading(nameOf(line.food, formats)),
    facts([
      { name: words.supplier, value: quote?.supplierName ?? words.buySheet.noQuote },
      ...offers.flatMap((offer) => offerFacts(offer, formats)),
      { name: words.buySheet.pledged, value: pledgedSum(line, formats) },
      ...(filled ? fillFacts(filled, { line, offers, formats }) : []),
      { name: words.buySheet.splitRule, value: words.splitRules[rule] ?? rule },
    ]),
  ];
}

function offerFacts(offer: Offer, formats: Formats): Fact[] {
  const { words } = formats;
  const prices = offer.breaks.map(({ fromBags, bagPriceMinorUnits }) =>
    offer.breaks.length === 1
      ? formats.money(bagPriceMinorUnits)
      : words.fromBags(fromBags, formats.money(bagPriceMinorUnits)),
  );
  const steps = offer.breaks.length > 1 && offer.breakKind === 'incremental' ? [words.incremental] : [];
  return [
    { name: words.buySheet.bagSize, value: formats.both(offer.bagGrams) },
    { name: words.buySheet.prices, value: [...prices, ...steps].join('; ') },
  ];
}

/** Whoever reads the sheet may take its own pledge off, so one household more must be in a sum than on a screen. */
function pledgedSum({ pledged }: PageLine, formats: Formats): string {
  if (!pledged.isShown || pledged.households <= LEAST_HOUSEHOLDS) return formats.words.buySheet.heldBack;
  const { leastGrams, wantedGrams, mostGrams } = pledged;
  return [leastGrams, wantedGrams, mostGrams].map(formats.both).join('\n');
}

function fillFacts(
  filled: Fill['lines'][number],
  { line, offers, formats }: { line: PageLine; offers: readonly Offer[]; formats: Formats },
): Fact[] {
  const { words } = formats;
  const sheet = words.buySheet;
  const bags = filled.bags
    .filter((bag) => bag.bags > 0)
    .map((bag) => {
      const size = offers.find((offer) => offer.bagOfferId === bag.bagOfferId)?.bagLabel ?? '';
      return `${formats.count(bag.bags)}\u00a0×\u00a0${together(size)}`;
    });
  const gramsOf = (units: number) => gramsOfPhysicalUnit(units, line.massUnit === 'kg' ? 'kg' : 'lb');
  const { tips } = filled;
  return [
    { name: sheet.bagsFull, value: bags.join(', ') || words.none },
    ...(tips
      ? [
          {
            name: sheet.toNextBag,
            value: tips.toNextBagUnits === 0 ? sheet.bagsWhole : formats.both(gramsOf(tips.toNextBagUnits)),
          },
        ]
      : []),
    { name: sheet.landed, value: filled.landedPrice ? formats.perMass(filled.landedPrice) : words.none },
    ...(tips ? [{ name: sheet.tipping, value: tipWords(tips, { gramsOf, formats }) }] : []),
  ];
}

type Tips = NonNullable<Fill['lines'][number]['tips']>;

function tipWords(
  { tip, freeTip }: Tips,
  { gramsOf, formats }: { gramsOf: (units: number) => number; formats: Formats },
): string {
  const sheet = formats.words.buySheet;
  if (freeTip) return sheet.tipFree(formats.both(gramsOf(freeTip.extraUnits)), freeTip.bags);
  if (!tip) return sheet.noTip;
  return sheet.tip(formats.both(gramsOf(tip.extraUnits)), tip.bags, formats.money(tip.savedMinorUnits));
}
