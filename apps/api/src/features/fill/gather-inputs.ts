import type { Tx } from '@sheafbook/db';
import type { BuyRow, RulesRow } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { listBuyLines } from '../buy/queries.ts';
import { listPledgesOfBuy } from '../pledge/queries.ts';
import { type BuyQuote, isStanding, listQuotesOfBuy } from '../quote/queries.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import {
  FILL_METHOD_VERSION,
  type FillInputs,
  type FillLineFacts,
  type FillQuote,
  sortPledges,
} from './inputs.ts';

/**
 * Everything that decides the fill of a buy today. A quote counts while it stands; one that was chosen by hand counts
 * also when it has lapsed since, because the guard then says so, and a silent other choice would not.
 * Reads every ceiling: only inside a transaction of the task 'fill'.
 */
export async function gatherInputs(
  tx: Tx,
  storehouseId: string,
  at: { buy: BuyRow; rules: RulesRow; todayOn: string },
): Promise<FillInputs> {
  const { buyId } = at.buy;
  const lines = (await listBuyLines(tx, storehouseId, buyId)).map((line): FillLineFacts => {
    const { buyLineId: lineId, massUnit, stepUnits, quoteId } = line;
    assert(massUnit === 'lb' || massUnit === 'kg', 'the database knows two units of a line');
    return {
      lineId,
      massUnit,
      stepUnits,
      commonCapGrams: line.commonCapGrams ?? at.rules.commonCapGrams,
      quoteId,
    };
  });
  const chosen = new Set(lines.map((line) => line.quoteId));
  const quotes = (await listQuotesOfBuy(tx, storehouseId, buyId)).filter(
    ({ quote }) => isStanding(quote, at.todayOn) || (quote.withdrawnAt === null && chosen.has(quote.quoteId)),
  );
  const pledges = await listPledgesOfBuy(tx, storehouseId, buyId, { withCeilings: true });
  return {
    methodVersion: FILL_METHOD_VERSION,
    commonOwnerId: (await loadHouseOwners(tx, storehouseId)).commonId,
    lines,
    quotes: quotes.map(toFillQuote),
    pledges: sortPledges(
      pledges.map((pledge) => ({
        pledgeId: pledge.pledgeId,
        householdId: pledge.householdId,
        seat: pledge.seat,
        lineId: pledge.buyLineId,
        leastGrams: pledge.leastGrams,
        wantedGrams: pledge.wantedGrams,
        mostGrams: pledge.mostGrams,
        wholeBags: pledge.wholeBags,
        substituteLineId: pledge.substituteLineId,
        rankedAt: pledge.rankedAt.toISOString(),
        ceiling: pledge.ceiling,
      })),
    ),
  };
}

function toFillQuote({ quote, freight, offers }: BuyQuote): FillQuote {
  return {
    quoteId: quote.quoteId,
    supplierId: quote.supplierId,
    validUntilOn: quote.validUntil,
    freight,
    minimumGoodsMinorUnits: quote.minimumGoodsMinorUnits,
    minimumGrams: quote.minimumGrams,
    offers: offers.map(({ bagOfferId, buyLineId, bagSize, bagGrams, breakKind, breaks, mostBags }) => ({
      bagOfferId,
      lineId: buyLineId,
      bagSize,
      bagGrams,
      breakKind,
      breaks,
      mostBags,
    })),
  };
}
