import { assert } from '@sheafbook/units';
import { presentBuyPage } from '../../buy/present.ts';
import { readBuy } from '../../buy/use-cases.ts';
import { presentComparison } from '../../quote/present.ts';
import type { BuyQuote } from '../../quote/queries.ts';
import { compareQuotesOfBuy, readQuotes } from '../../quote/use-cases.ts';
import { type Block, facts, figures, heading, type Row, table, text } from '../content.ts';
import { type Formats, together } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, subject } from './making.ts';

type Comparison = ReturnType<typeof presentComparison>;
type Compared = Comparison['lines'][number];
type Lines = ReturnType<typeof presentBuyPage>['lines'];

/** Quotes side by side on what a pound costs landed, at what is pledged least, wanted and most. */
export async function makeQuoteComparison({ context, formats }: Desk, buyId: string): Promise<MadePaper> {
  const page = presentBuyPage(await readBuy(context, buyId), context.actor);
  const comparison = presentComparison(await compareQuotesOfBuy(context, buyId, undefined));
  const quotes = (await readQuotes(context, buyId))
    .map(({ quote }) => quote)
    .filter(({ quote }) => quote.withdrawnAt === null);
  const { words } = formats;
  const content = {
    about: [page.name],
    blocks: [
      ...(comparison.lines.length === 0 ? [text(words.comparison.nothing)] : []),
      text(words.currencyOnce(formats.currency)),
      ...page.lines.flatMap((line) =>
        foodBlocks(
          comparison.lines.filter(({ buyLineId }) => buyLineId === line.id),
          { lines: page.lines, quotes, formats },
        ),
      ),
      ...basketBlocks(comparison, { lines: page.lines, quotes, formats }),
      heading(words.comparison.terms),
      ...quotes.map((quote) => termsOf(quote, formats)),
    ],
  };
  return { subject: subject('quote-comparison', { buyId }), contentWith: () => content, isLandscape: true };
}

type Known = { lines: Lines; quotes: readonly BuyQuote[]; formats: Formats };

function foodOf(lineId: string, { lines, formats }: Known): string {
  const line = lines.find((known) => known.id === lineId);
  return line ? nameOf(line.food, formats) : '';
}

const bagsOf = (
  bags: readonly { readonly bagOfferId: string; readonly bags: number }[],
  { quotes, formats }: Known,
): string => {
  const offers = quotes.flatMap((quote) => quote.offers);
  return bags
    .filter((bag) => bag.bags > 0)
    .map((bag) => {
      const label = offers.find((offer) => offer.bagOfferId === bag.bagOfferId)?.bagLabel ?? '';
      return `${formats.count(bag.bags)}\u00a0×\u00a0${together(label)}`;
    })
    .join('\n');
};

/** One food at each of the masses that are compared, every quote beneath the other. */
function foodBlocks(rows: readonly Compared[], known: Known): Block[] {
  const { words } = known.formats;
  const [first] = rows;
  if (!first) return [];
  const title = heading(foodOf(first.buyLineId, known));
  if (rows.every(({ quotes }) => quotes.length === 0)) return [title, text(words.comparison.noQuotes)];
  return [
    title,
    table(
      [
        { name: words.comparison.compared },
        { name: words.supplier },
        { name: words.bags, isNumber: true },
        { name: words.total, isNumber: true },
        ...figures(words.goods, words.freight, words.comparison.landed, words.perPound, words.perKilogram),
        { name: words.comparison.verdict },
      ],
      rows.flatMap((row) => row.quotes.map((_, at) => quoteRow(row, { at, known }))),
    ),
  ];
}

function quoteRow(row: Compared, { at, known }: { at: number; known: Known }): Row {
  const { formats } = known;
  const { words } = formats;
  const quote = row.quotes[at];
  assert(quote, 'a row for each quote that was compared');
  const marks = [
    quote.quoteId === row.cheapestQuoteId ? words.comparison.cheapest : '',
    quote.meetsMinimum ? '' : words.comparison.belowMinimum,
  ];
  return {
    cells: [
      at === 0 ? `${words.comparison.at[row.at] ?? row.at}\n${formats.bothLines(row.grams)}` : '',
      quote.supplier,
      bagsOf(quote.bags, known),
      formats.bothLines(quote.grams),
      formats.money(quote.goodsMinorUnits),
      formats.money(quote.freightMinorUnits),
      formats.money(quote.totalMinorUnits),
      formats.price(quote.landedPrice, 'lb'),
      formats.price(quote.landedPrice, 'kg'),
      marks.filter((mark) => mark !== '').join('\n'),
    ],
  };
}

function basketBlocks({ basket, basketAbsent }: Comparison, known: Known): Block[] {
  const { formats } = known;
  const { words } = formats;
  if (!basket)
    return basketAbsent === null
      ? []
      : [heading(words.comparison.basket), text(words.comparison.basketAbsent[basketAbsent] ?? basketAbsent)];
  const supplierOf = (quoteId: string) =>
    basket.quotes.find((quote) => quote.quoteId === quoteId)?.supplier ?? '';
  return [
    heading(words.comparison.basket),
    table(
      [
        { name: words.food },
        { name: words.supplier },
        { name: words.bags, isNumber: true },
        ...figures(words.total, words.goods),
      ],
      [
        ...basket.lines.map((line) => ({
          cells: [
            foodOf(line.buyLineId, known),
            supplierOf(line.quoteId),
            bagsOf(line.bags, known),
            formats.bothLines(line.grams),
            formats.money(line.goodsMinorUnits),
          ],
        })),
        ...basket.quotes.map((quote) => ({
          cells: [words.freight, quote.supplier, '', '', formats.money(quote.freightMinorUnits)],
        })),
        { kind: 'sum' as const, cells: [words.whole, '', '', '', formats.money(basket.totalMinorUnits)] },
      ],
    ),
    text(words.comparison.basketTotal(basket.assignmentsTried)),
  ];
}

function termsOf({ quote, supplierName, freight }: BuyQuote, formats: Formats): Block {
  const { words } = formats;
  const steps = freight.steps.map(({ fromGrams, minorUnits }) =>
    fromGrams === 0
      ? formats.money(minorUnits)
      : words.order.freightFrom(formats.both(fromGrams), formats.money(minorUnits)),
  );
  const free = freight.freeFromGoodsMinorUnits;
  const minimums = [
    quote.minimumGoodsMinorUnits > 0 ? formats.money(quote.minimumGoodsMinorUnits) : '',
    quote.minimumGrams > 0 ? formats.both(quote.minimumGrams) : '',
  ].filter((part) => part !== '');
  return facts([
    { name: words.supplier, value: supplierName },
    {
      name: words.validUntil,
      value: [formats.day(quote.validUntil), quote.reference].filter((part) => part !== '').join(', '),
    },
    {
      name: words.freight,
      value:
        [...steps, ...(free === null ? [] : [words.comparison.freightFree(formats.money(free))])].join(
          '; ',
        ) || words.none,
    },
    { name: words.comparison.minimum, value: minimums.join(', ') || words.none },
    { name: words.comparison.leadDays, value: formats.count(quote.leadDays) },
    quote.cropYear !== null && { name: words.cropYear, value: String(quote.cropYear) },
    quote.moistureNote !== '' && { name: words.moisture, value: quote.moistureNote },
  ]);
}
