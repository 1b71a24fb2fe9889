import type { Tx } from '@sheafbook/db';
import {
  type BagOfferRow,
  bagOffers,
  type PriceBreakRow,
  priceBreaks,
  type QuoteFreightStepRow,
  type QuoteRow,
  quoteFreightSteps,
  quotes,
  suppliers,
} from '@sheafbook/db/tables';
import type { BagOffer, FreightTerms } from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import { and, asc, eq, inArray } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

/** A bag offer as `@sheafbook/sharing` prices it, with the line that it is for. */
export type QuotedOffer = BagOffer & { readonly buyLineId: string; readonly bagLabel: string };

/** A quote with all its terms in the shapes of `@sheafbook/sharing`. */
export type BuyQuote = {
  readonly quote: QuoteRow;
  readonly supplierName: string;
  readonly freight: FreightTerms;
  readonly offers: readonly QuotedOffer[];
};

/** Every quote of a buy in the order of entering, the withdrawn ones too. */
export async function listQuotesOfBuy(tx: Tx, storehouseId: string, buyId: string): Promise<BuyQuote[]> {
  const rows = await tx
    .select({ quote: quotes, supplierName: suppliers.name })
    .from(quotes)
    .innerJoin(suppliers, joinOn(suppliers, quotes, 'supplierId'))
    .where(and(eq(quotes.storehouseId, storehouseId), eq(quotes.buyId, buyId)))
    .orderBy(asc(quotes.enteredAt), asc(quotes.quoteId));
  const steps = await listFreightSteps(
    tx,
    storehouseId,
    rows.map(({ quote }) => quote.quoteId),
  );
  const offers = await listBagOffers(tx, storehouseId, buyId);
  const breaks = await listPriceBreaks(
    tx,
    storehouseId,
    offers.map((offer) => offer.bagOfferId),
  );
  return rows.map((row) => toBuyQuote(row, { steps, offers, breaks }));
}

/** Whether a quote can still be ordered from on a day. */
export const isStanding = (quote: QuoteRow, todayOn: string): boolean =>
  quote.withdrawnAt === null && quote.validUntil >= todayOn;

function toBuyQuote(
  { quote, supplierName }: { quote: QuoteRow; supplierName: string },
  parts: {
    steps: readonly QuoteFreightStepRow[];
    offers: readonly BagOfferRow[];
    breaks: readonly PriceBreakRow[];
  },
): BuyQuote {
  const steps = parts.steps
    .filter((step) => step.quoteId === quote.quoteId)
    .map(({ fromGrams, minorUnits }) => ({ fromGrams, minorUnits }));
  return {
    quote,
    supplierName,
    freight: { steps, freeFromGoodsMinorUnits: quote.freightFreeFromMinorUnits },
    offers: parts.offers
      .filter((offer) => offer.quoteId === quote.quoteId)
      .map((offer) => toQuotedOffer(offer, parts.breaks)),
  };
}

function toQuotedOffer(offer: BagOfferRow, breaks: readonly PriceBreakRow[]): QuotedOffer {
  const { bagOfferId, buyLineId, bagSize, bagGrams, bagLabel, breakKind, mostBags } = offer;
  assert(breakKind === 'all-units' || breakKind === 'incremental', 'the database knows two kinds of break');
  const own = breaks
    .filter((priceBreak) => priceBreak.bagOfferId === bagOfferId)
    .map(({ fromBags, bagPriceMinorUnits }) => ({ fromBags, bagPriceMinorUnits }));
  return { bagOfferId, buyLineId, bagSize, bagGrams, bagLabel, breakKind, breaks: own, mostBags };
}

async function listFreightSteps(tx: Tx, storehouseId: string, quoteIds: readonly string[]) {
  return tx
    .select()
    .from(quoteFreightSteps)
    .where(
      and(
        eq(quoteFreightSteps.storehouseId, storehouseId),
        inArray(quoteFreightSteps.quoteId, [...quoteIds]),
      ),
    )
    .orderBy(asc(quoteFreightSteps.fromGrams));
}

async function listBagOffers(tx: Tx, storehouseId: string, buyId: string) {
  return tx
    .select()
    .from(bagOffers)
    .where(and(eq(bagOffers.storehouseId, storehouseId), eq(bagOffers.buyId, buyId)))
    .orderBy(asc(bagOffers.buyLineId), asc(bagOffers.bagSize));
}

async function listPriceBreaks(tx: Tx, storehouseId: string, offerIds: readonly string[]) {
  return tx
    .select()
    .from(priceBreaks)
    .where(and(eq(priceBreaks.storehouseId, storehouseId), inArray(priceBreaks.bagOfferId, [...offerIds])))
    .orderBy(asc(priceBreaks.fromBags));
}

/** One quote of a buy with its terms. */
export async function loadQuoteOfBuy(
  tx: Tx,
  storehouseId: string,
  { buyId, quoteId }: { buyId: string; quoteId: string },
): Promise<BuyQuote> {
  const all = await listQuotesOfBuy(tx, storehouseId, buyId);
  const quote = all.find((candidate) => candidate.quote.quoteId === quoteId);
  if (!quote) throw new Problem('thing-not-found', { thing: 'quote' });
  return quote;
}

export async function insertQuote(tx: Tx, quote: typeof quotes.$inferInsert): Promise<void> {
  await tx.insert(quotes).values(quote);
}

export async function updateQuote(
  tx: Tx,
  quote: QuoteRow,
  change: Partial<typeof quotes.$inferInsert>,
): Promise<void> {
  await tx
    .update(quotes)
    .set({ ...change, version: quote.version + 1 })
    .where(and(eq(quotes.storehouseId, quote.storehouseId), eq(quotes.quoteId, quote.quoteId)));
}

export async function insertFreightSteps(
  tx: Tx,
  steps: readonly (typeof quoteFreightSteps.$inferInsert)[],
): Promise<void> {
  if (steps.length > 0) await tx.insert(quoteFreightSteps).values([...steps]);
}

export async function insertBagOffers(
  tx: Tx,
  offers: readonly (typeof bagOffers.$inferInsert)[],
): Promise<void> {
  if (offers.length > 0) await tx.insert(bagOffers).values([...offers]);
}

export async function insertPriceBreaks(
  tx: Tx,
  breaks: readonly (typeof priceBreaks.$inferInsert)[],
): Promise<void> {
  if (breaks.length > 0) await tx.insert(priceBreaks).values([...breaks]);
}

export async function deleteFreightSteps(tx: Tx, { storehouseId, quoteId }: QuoteRow): Promise<void> {
  await tx
    .delete(quoteFreightSteps)
    .where(and(eq(quoteFreightSteps.storehouseId, storehouseId), eq(quoteFreightSteps.quoteId, quoteId)));
}

/** Takes bag offers away with their price breaks, which stand on them. */
export async function deleteBagOffers(
  tx: Tx,
  storehouseId: string,
  offerIds: readonly string[],
): Promise<void> {
  await tx
    .delete(priceBreaks)
    .where(and(eq(priceBreaks.storehouseId, storehouseId), inArray(priceBreaks.bagOfferId, [...offerIds])));
  await tx
    .delete(bagOffers)
    .where(and(eq(bagOffers.storehouseId, storehouseId), inArray(bagOffers.bagOfferId, [...offerIds])));
}
