import type { Tx } from '@sheafbook/db';
import { dayInZone, sumOf, yearEndBy } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { readAgreement } from '../bank/use-cases.ts';
import { listYearAccounts } from '../money/queries.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import {
  type BuyAtClose,
  countStockAtClose,
  countUncountedCash,
  listBuysAtClose,
  listClaimsAtClose,
} from './missing-queries.ts';
import { findCloseBefore } from './queries.ts';

type MissingBuy = { readonly buyId: string; readonly name: string };

/** One thing that a close would leave open. What blocks can be settled first; the rest may run on into the next days. */
export type MissingAtClose = {
  readonly code:
    | 'results-not-carried'
    | 'buys-not-clear'
    | 'buys-open'
    | 'claims-open'
    | 'deposits-held'
    | 'bank-differs'
    | 'bank-not-told'
    | 'tin-not-counted'
    | 'stock-not-counted'
    | 'stock-differs';
  readonly isBlocking: boolean;
  readonly count: number;
  readonly minorUnits: number | null;
  readonly buys: readonly MissingBuy[];
  /** The day that the bank told its balance of last, or the year's end that results are due by. */
  readonly onDay: string | null;
};

/**
 * What a close through a day would leave open. Blocking is what the book itself can settle: at a year's end the results
 * that are not in the store fund, and a buy shared out or called off by then whose clearing account is not at 0.00 (job map 2.18). A buy that
 * runs on over the day, its claims and deposits, and what was not counted or told, are warnings: the year can't wait
 * for a lorry.
 */
export async function listMissingAtClose(
  tx: Tx,
  { actor }: Context,
  throughOn: string,
): Promise<MissingAtClose[]> {
  const { storehouseId } = actor;
  const buys = await listBuysAtClose(tx, storehouseId, throughOn);
  const claims = await listClaimsAtClose(tx, storehouseId, throughOn);
  const bank = await readAgreement(tx, storehouseId, throughOn);
  const stock = await countStockAtClose(tx, storehouseId);
  const isEnded = ({ sharedOutAt }: BuyAtClose) =>
    sharedOutAt !== null && dayInZone(sharedOutAt.getTime(), actor.timeZone) <= throughOn;
  const unclear = buys.filter((buy) => isEnded(buy) && buy.clearingMinorUnits !== 0);
  const open = buys.filter(({ stage }) => stage !== 'closed' && stage !== 'called-off');
  const held = buys.filter(({ depositMinorUnits }) => depositMinorUnits !== 0);
  return [
    await resultsAtClose(tx, storehouseId, throughOn),
    missing('buys-not-clear', unclear.length, { isBlocking: true, buys: unclear }),
    missing('buys-open', open.length, { buys: open }),
    missing('claims-open', sumOf(claims.map(({ count }) => count)), {
      minorUnits: sumOf(claims.map(({ minorUnits }) => minorUnits)),
      buys: claims,
    }),
    missing('deposits-held', held.length, {
      minorUnits: sumOf(held.map(({ depositMinorUnits }) => depositMinorUnits)),
      buys: held,
    }),
    missing('bank-differs', bank.differenceMinorUnits === 0 ? 0 : 1, {
      minorUnits: bank.differenceMinorUnits,
      onDay: bank.toldOn,
    }),
    missing('bank-not-told', bank.entriesSince, { onDay: bank.toldOn }),
    missing('tin-not-counted', await countUncountedCash(tx, storehouseId, throughOn)),
    missing('stock-not-counted', stock.uncounted),
    missing('stock-differs', stock.differing),
  ].filter(({ count }) => count > 0);
}

/**
 * Results that are not in the store fund. They are due once a year's end lies in the days to close, by that end; what
 * came in and went out since, or in a close within a year, is only listed.
 */
async function resultsAtClose(tx: Tx, storehouseId: string, throughOn: string): Promise<MissingAtClose> {
  const { yearEndMonth } = await loadStorehouse(tx, storehouseId);
  const yearEnd = yearEndBy(throughOn, yearEndMonth);
  const before = await findCloseBefore(tx, storehouseId, throughOn);
  const isYearsEnd = before === undefined || before.closedThrough < yearEnd;
  const due = isYearsEnd ? await listYearAccounts(tx, storehouseId, yearEnd) : [];
  const results = due.length > 0 ? due : await listYearAccounts(tx, storehouseId, throughOn);
  return missing('results-not-carried', results.length, {
    isBlocking: due.length > 0,
    minorUnits: -sumOf(results.map(({ balance }) => balance)),
    onDay: due.length > 0 ? yearEnd : null,
  });
}

function missing(
  code: MissingAtClose['code'],
  count: number,
  more: Partial<Omit<MissingAtClose, 'code' | 'count'>> = {},
): MissingAtClose {
  const buys = (more.buys ?? []).map(({ buyId, name }) => ({ buyId, name }));
  return { code, count, isBlocking: false, minorUnits: null, onDay: null, ...more, buys };
}

/** Refuses a close that leaves something open which the book can settle first. The caller has locked the book. */
export async function refuseUnsettled(tx: Tx, context: Context, throughOn: string): Promise<void> {
  const blocking = (await listMissingAtClose(tx, context, throughOn)).filter(({ isBlocking }) => isBlocking);
  if (blocking.length > 0) throw new Problem('period-unsettled', { missing: blocking });
}
