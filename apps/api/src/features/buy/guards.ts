import type { BuyLineRow, BuyRow } from '@sheafbook/db/tables';
import { type Missing, stageGuards } from '@sheafbook/ledger';
import { dayInZone } from '@sheafbook/units';
import type { BuyQuote } from '../quote/queries.ts';

/** What a planned buy still lacks before pledges are gathered. Withdrawn quotes count for nothing. */
export function listMissingForGathering(
  { buy, lines, quotes }: { buy: BuyRow; lines: readonly BuyLineRow[]; quotes: readonly BuyQuote[] },
  timeZone: string,
): Missing[] {
  const foodIdOf = new Map(lines.map((line) => [line.buyLineId, line.foodId]));
  const standing = quotes.filter(({ quote }) => quote.withdrawnAt === null);
  return stageGuards({
    from: 'planning',
    to: 'gathering',
    facts: {
      foodIds: lines.map((line) => line.foodId),
      // One fact a quote, whatever it offers, so that a quote that lapses is named once.
      quotes: standing.map(({ quote, offers }) => ({
        quoteId: quote.quoteId,
        foodId: foodIdOf.get(offers[0]?.buyLineId ?? '') ?? '',
        validUntilOn: quote.validUntil,
      })),
      gatheringClosesOn: dayInZone(buy.gatheringClosesAt.getTime(), timeZone),
    },
  });
}

/**
 * What a gathering buy still lacks before it is fixed, as far as it can be told without filling the bags: fixing fills
 * them itself, under its own lock, and its preview tells the rest.
 */
export function listMissingForFixing(standingQuotes: number): Missing[] {
  const facts = { isFillCurrent: null, allotments: [], supplierIdsBelowMinimum: [] };
  const noQuote: Missing[] = standingQuotes === 0 ? [{ code: 'no-quote' }] : [];
  return [...noQuote, ...stageGuards({ from: 'gathering', to: 'fixed', facts })];
}
