import type { Tx } from '@sheafbook/db';
import type { BuyLineRow, BuyRow, PledgeRow } from '@sheafbook/db/tables';
import { countFromGrams, dayInZone, gramsOfPhysicalUnit } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listBuyLines, loadBuy, lockBuyForUpdate, requireStage, updateBuyLine } from '../buy/queries.ts';
import { listPledgesOfBuy } from '../pledge/queries.ts';
import { countPledgesOffBagSize } from '../pledge/use-cases.ts';
import { findSupplier } from '../supplier/queries.ts';
import { type ComparedMass, compareBuy, massOfUnits } from './comparison.ts';
import { presentLineChoice, presentQuote, type QuoteWithWarnings } from './present.ts';
import {
  type BuyQuote,
  deleteBagOffers,
  deleteFreightSteps,
  insertBagOffers,
  insertFreightSteps,
  insertPriceBreaks,
  insertQuote,
  isStanding,
  listQuotesOfBuy,
  loadQuoteOfBuy,
  updateQuote,
} from './queries.ts';
import type { QuoteChoice, QuoteReplacement, QuoteTerms, QuoteWish } from './schema.ts';
import { listQuoteWarnings } from './warnings.ts';

type Named = { readonly buyId: string; readonly quoteId: string };

/** Every quote of a buy, each with what whoever chooses it should know. */
export function readQuotes(context: Context, buyId: string): Promise<QuoteWithWarnings[]> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await loadBuy(tx, storehouseId, buyId);
    const lines = await listBuyLines(tx, storehouseId, buyId);
    const quotes = await listQuotesOfBuy(tx, storehouseId, buyId);
    return quotes.map((quote) => withWarnings(context, quote, { buy, lines }));
  });
}

/**
 * Enters a supplier's quote for a buy that is planned or gathering. It changes what the guards of the next stage
 * read, so the buy is locked for it alone.
 */
export function enterQuote(context: Context, buyId: string, wish: QuoteWish): Promise<QuoteWithWarnings> {
  const { storehouseId, personId } = context.actor;
  const { supplierId, ...terms } = wish;
  refuseForeignCurrency(context, terms);
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const lines = await listBuyLines(tx, storehouseId, buyId);
    await requireSupplier(tx, storehouseId, supplierId);
    await refuseUnfit(tx, context, { buy, lines, supplierId, terms });
    const quoteId = newId(context);
    await insertQuote(tx, {
      ...columnsOf(terms),
      storehouseId,
      quoteId,
      buyId,
      supplierId,
      enteredBy: personId,
      enteredAt: context.now(),
    });
    await insertTerms(tx, context, { buyId, quoteId, lines, terms });
    const quote = await loadQuoteOfBuy(tx, storehouseId, { buyId, quoteId });
    return withWarnings(context, quote, { buy, lines });
  });
}

/** Replaces the terms of a quote whole. A line that chose it and isn't offered any more loses the choice. */
export function replaceQuote(
  context: Context,
  { buyId, quoteId }: Named,
  { version, ...terms }: QuoteReplacement,
): Promise<QuoteWithWarnings> {
  const { storehouseId } = context.actor;
  refuseForeignCurrency(context, terms);
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const lines = await listBuyLines(tx, storehouseId, buyId);
    const before = await loadQuoteOfBuy(tx, storehouseId, { buyId, quoteId });
    const { supplierId } = before.quote;
    await refuseUnfit(tx, context, { buy, lines, supplierId, terms, quoteId });
    refuseStale(context, before, { version, buy, lines });
    refuseWithdrawn(before);
    await updateQuote(tx, before.quote, columnsOf(terms));
    await deleteFreightSteps(tx, before.quote);
    await deleteBagOffers(
      tx,
      storehouseId,
      before.offers.map((offer) => offer.bagOfferId),
    );
    await insertTerms(tx, context, { buyId, quoteId, lines, terms });
    const offered = new Set(terms.offers.map((offer) => offer.buyLineId));
    await takeChoiceBack(
      tx,
      lines.filter((line) => line.quoteId === quoteId && !offered.has(line.buyLineId)),
    );
    const quote = await loadQuoteOfBuy(tx, storehouseId, { buyId, quoteId });
    return withWarnings(context, quote, { buy, lines });
  });
}

/** Withdraws a quote; it stays to be read, and the lines that chose it are without one. */
export function withdrawQuote(
  context: Context,
  { buyId, quoteId }: Named,
  version: number,
): Promise<QuoteWithWarnings> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const lines = await listBuyLines(tx, storehouseId, buyId);
    const before = await loadQuoteOfBuy(tx, storehouseId, { buyId, quoteId });
    requireStage(buy, 'planning', 'gathering');
    refuseStale(context, before, { version, buy, lines });
    refuseWithdrawn(before);
    await updateQuote(tx, before.quote, { withdrawnAt: context.now() });
    await takeChoiceBack(
      tx,
      lines.filter((line) => line.quoteId === quoteId),
    );
    const quote = await loadQuoteOfBuy(tx, storehouseId, { buyId, quoteId });
    return withWarnings(context, quote, { buy, lines });
  });
}

/** Chooses the quote that a line will be filled from, or takes the choice back. */
export function chooseQuote(
  context: Context,
  { buyId, buyLineId }: { buyId: string; buyLineId: string },
  { version, quoteId }: QuoteChoice,
) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const lines = await listBuyLines(tx, storehouseId, buyId);
    const line = lines.find((candidate) => candidate.buyLineId === buyLineId);
    if (!line) throw new Problem('thing-not-found', { thing: 'line' });
    const quotes = await listQuotesOfBuy(tx, storehouseId, buyId);
    const quote = quotes.find((candidate) => candidate.quote.quoteId === quoteId);
    if (quoteId !== null && !quote)
      throw fieldProblem('thing-not-found', 'quoteId', 'There is no such quote in this buy.');
    requireStage(buy, 'planning', 'gathering');
    const sizes = quote ? bagSizesFor(context, quote, line) : null;
    const pledgesOffBagSize = sizes ? await countPledgesOffBagSize(tx, line, sizes) : 0;
    if (line.version !== version)
      throw new Problem('stale-version', { newer: presentLineChoice({ line, pledgesOffBagSize }) });
    return { line: await updateBuyLine(tx, line, { quoteId }), pledgesOffBagSize };
  });
}

/**
 * Compares the standing quotes at the sums of what is pledged, least, wanted and most, or at a mass that was asked
 * for. A line that nobody pledged on is left out.
 */
export function compareQuotesOfBuy(context: Context, buyId: string, grams: number | undefined) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    const lines = await listBuyLines(tx, storehouseId, buyId);
    const quotes = await listQuotesOfBuy(tx, storehouseId, buyId);
    const pledges = await listPledgesOfBuy(tx, storehouseId, buyId);
    const compared = lines.map((line) => {
      const onLine = pledges.filter((pledge) => pledge.buyLineId === line.buyLineId);
      const asked = grams === undefined ? null : [{ at: 'asked' as const, grams, coverGrams: grams }];
      return { line, masses: asked ?? massesOf(line, onLine) };
    });
    return compareBuy(
      compared,
      quotes.filter(({ quote }) => isStanding(quote, todayOf(context))),
    );
  });
}

function massesOf(line: BuyLineRow, pledges: readonly PledgeRow[]): ComparedMass[] {
  const massUnit = unitOf(line);
  const sum = (gramsOf: (pledge: PledgeRow) => number) =>
    pledges.reduce((units, pledge) => units + (countFromGrams(gramsOf(pledge), massUnit) ?? 0), 0);
  const sums = [
    ['least', sum((pledge) => pledge.leastGrams)],
    ['wanted', sum((pledge) => pledge.wantedGrams)],
    ['most', sum((pledge) => pledge.mostGrams)],
  ] as const;
  return sums.filter(([, units]) => units > 0).map(([at, units]) => massOfUnits(at, units, massUnit));
}

const unitOf = (line: BuyLineRow) => (line.massUnit === 'kg' ? 'kg' : 'lb');

/** The sizes a quote offers a line in; refuses a quote that can't be ordered from for this line. */
function bagSizesFor(context: Context, { quote, offers }: BuyQuote, line: BuyLineRow): number[] {
  if (!isStanding(quote, todayOf(context)))
    throw fieldProblem('quote-not-valid', 'quoteId', 'The quote was withdrawn or has lapsed.');
  const sizes = offers.filter((offer) => offer.buyLineId === line.buyLineId).map((offer) => offer.bagSize);
  if (sizes.length === 0)
    throw fieldProblem('quote-not-valid', 'quoteId', 'The quote does not offer this food.');
  return sizes;
}

function withWarnings(
  context: Context,
  quote: BuyQuote,
  { buy, lines }: { buy: BuyRow; lines: readonly BuyLineRow[] },
): QuoteWithWarnings {
  return { quote, warnings: listQuoteWarnings(quote, { buy, lines, todayOn: todayOf(context) }) };
}

/** One currency a storehouse, for good (ledger-notes 6.13). */
function refuseForeignCurrency({ actor }: Context, { currency }: QuoteTerms): void {
  if (currency !== undefined && currency !== actor.currency)
    throw fieldProblem(
      'currency-mixed',
      'currency',
      `The storehouse keeps ${actor.currency}. Put a price in ${currency} into foreignPriceNote.`,
    );
}

async function requireSupplier(tx: Tx, storehouseId: string, supplierId: string): Promise<void> {
  if (!(await findSupplier(tx, storehouseId, supplierId)))
    throw fieldProblem('thing-not-found', 'supplierId', 'There is no such supplier.');
}

type Judged = {
  readonly buy: BuyRow;
  readonly lines: readonly BuyLineRow[];
  readonly supplierId: string;
  readonly terms: QuoteTerms;
  /** The quote that is replaced. */
  readonly quoteId?: string;
};

async function refuseUnfit(tx: Tx, context: Context, judged: Judged): Promise<void> {
  const { buy, lines, supplierId, terms, quoteId } = judged;
  const known = new Set(lines.map((line) => line.buyLineId));
  const unknown = terms.offers.findIndex((offer) => !known.has(offer.buyLineId));
  if (unknown >= 0)
    throw fieldProblem(
      'thing-not-found',
      `offers.${unknown}.buyLineId`,
      'There is no such line in this buy.',
    );
  requireStage(buy, 'planning', 'gathering');
  refuseLapsing(context, buy, terms.validUntil);
  const others = await listQuotesOfBuy(tx, buy.storehouseId, buy.buyId);
  const isTaken = others.some(
    ({ quote }) =>
      quote.quoteId !== quoteId &&
      quote.withdrawnAt === null &&
      quote.supplierId === supplierId &&
      quote.reference === terms.reference,
  );
  if (isTaken)
    throw fieldProblem(
      'already-there',
      'reference',
      'This supplier has a quote with this reference in the buy. Replace that one, or tell them apart.',
    );
}

/** Once pledges are gathered, the guard that let them in must go on holding: every quote outlives the gathering. */
function refuseLapsing(context: Context, buy: BuyRow, validUntil: string): void {
  const todayOn = todayOf(context);
  const closesOn = dayInZone(buy.gatheringClosesAt.getTime(), context.actor.timeZone);
  if (validUntil < todayOn)
    throw fieldProblem('quote-not-valid', 'validUntil', `The quote lapsed before today, ${todayOn}.`);
  if (buy.stage === 'gathering' && validUntil <= closesOn)
    throw fieldProblem(
      'quote-not-valid',
      'validUntil',
      `The gathering closes on ${closesOn}; a quote must stand longer than that.`,
    );
}

function refuseStale(
  context: Context,
  quote: BuyQuote,
  at: { version: number; buy: BuyRow; lines: readonly BuyLineRow[] },
): void {
  if (quote.quote.version !== at.version)
    throw new Problem('stale-version', { newer: presentQuote(withWarnings(context, quote, at)) });
}

function refuseWithdrawn({ quote }: BuyQuote): void {
  if (quote.withdrawnAt !== null)
    throw new Problem('quote-not-valid', { detail: 'The quote was withdrawn before.' });
}

function columnsOf({ offers: _offers, freightSteps: _steps, currency: _currency, ...columns }: QuoteTerms) {
  return columns;
}

async function insertTerms(
  tx: Tx,
  context: Context,
  at: { buyId: string; quoteId: string; lines: readonly BuyLineRow[]; terms: QuoteTerms },
): Promise<void> {
  const { storehouseId } = context.actor;
  const { buyId, quoteId, lines, terms } = at;
  const unitOf = new Map(
    lines.map((line) => [line.buyLineId, line.massUnit === 'kg' ? 'kg' : 'lb'] as const),
  );
  const offers = terms.offers.map((offer) => ({ ...offer, bagOfferId: newId(context) }));
  await insertFreightSteps(
    tx,
    terms.freightSteps.map((step) => ({ ...step, storehouseId, quoteId })),
  );
  await insertBagOffers(
    tx,
    offers.map(({ breaks: _, ...offer }) => {
      const massUnit = unitOf.get(offer.buyLineId) ?? 'lb';
      const bagGrams = gramsOfPhysicalUnit(offer.bagSize, massUnit);
      return { ...offer, storehouseId, quoteId, buyId, bagGrams, bagLabel: `${offer.bagSize} ${massUnit}` };
    }),
  );
  await insertPriceBreaks(
    tx,
    offers.flatMap(({ bagOfferId, breaks }) =>
      breaks.map((priceBreak) => ({ ...priceBreak, storehouseId, bagOfferId })),
    ),
  );
}

async function takeChoiceBack(tx: Tx, lines: readonly BuyLineRow[]): Promise<void> {
  for (const line of lines) await updateBuyLine(tx, line, { quoteId: null });
}
