import type { Tx } from '@sheafbook/db';
import { trialBalance, yearOfMass } from '@sheafbook/ledger';
import { addDays, sumOf, yearEndBy } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { auditAsReviewer } from '../audit/use-cases.ts';
import { readTotals } from '../coverage/use-cases.ts';
import { listCorrections, listOverrides } from '../exception/queries.ts';
import { listGiftsBetween } from '../gift/queries.ts';
import { summaryOf } from '../gift/use-cases.ts';
import { listPeriodCloses, listSignatures } from '../period/queries.ts';
import { sumLooks } from '../private-read/queries.ts';
import { savingsInside } from '../shelf-price/use-cases.ts';
import { listCommonStock, listCounts } from '../stock-count/queries.ts';
import { loadWorths } from '../stock-count/use-cases.ts';
import { loadHouseOwners, loadStorehouse } from '../storehouse/queries.ts';
import { drawTracesInside, presentTraces } from '../trace/use-cases.ts';
import { listMoneyTotals } from '../trial-balance/queries.ts';
import { sumCrossings } from '../year-of-mass/queries.ts';
import { seesAmountsOfYear } from './policy.ts';
import { countReceipts, countReviewedLoans, listReviewedBuys, loadReviewedSessions } from './queries.ts';

type Period = { readonly fromOn: string; readonly throughOn: string };

/**
 * A year as those read it who sign it (job map 13, paper 12), from the very readings that the screens have. It runs from
 * the end of the year before to a day: of a close, or today for a year that runs. What households are told of is what the
 * audit, the traces and the median of coverage look at; no household stands in it.
 */
export async function readYearReview(context: Context, wish: { through?: string | undefined }) {
  const throughOn = wish.through ?? todayOf(context);
  refuseFutureDay(context, { field: 'through', on: throughOn });
  const book = await withTx(context, (tx) => reviewInside(tx, context, throughOn), {
    task: 'review',
    isReadOnly: true,
  });
  /** An account that one household alone stands in tells its amount: accounts one by one are for the books' duties. */
  const seesAmounts = seesAmountsOfYear(context.actor);
  return { ...book, seesAmounts, coverage: (await readTotals(context)).days };
}
export type YearReview = Awaited<ReturnType<typeof readYearReview>>;

async function reviewInside(tx: Tx, context: Context, throughOn: string) {
  const { storehouseId, timeZone } = context.actor;
  const { yearEndMonth } = await loadStorehouse(tx, storehouseId);
  const period = { fromOn: addDays(yearEndBy(addDays(throughOn, -1), yearEndMonth), 1), throughOn };
  const days = { ...period, timeZone };
  const closes = await listPeriodCloses(tx, storehouseId);
  const close = closes.find(({ closedThrough }) => closedThrough === throughOn);
  const signatures = await listSignatures(tx, storehouseId);
  const seed = close?.digestSha256 ?? throughOn;
  return {
    ...{ period, todayOn: todayOf(context), seed, digestSha256: close?.digestSha256 ?? null },
    signatures: signatures.filter(({ closedThrough }) => closedThrough === throughOn),
    buys: await listReviewedBuys(tx, storehouseId, days),
    savings: await savingsInside(tx, context, period),
    sessions: await loadReviewedSessions(tx, storehouseId, days),
    loans: await countReviewedLoans(tx, storehouseId, days),
    gifts: await giftsOf(tx, context, days),
    lost: await lostOf(tx, storehouseId, period),
    ...(await moneyOf(tx, storehouseId, period)),
    findings: (await auditAsReviewer(tx, context)).findings,
    traces: presentTraces(await drawTracesInside(tx, context, seed)),
    counts: await countsOf(tx, context, period),
    ...(await exceptionsOf(tx, context, period)),
    looks: await looksOf(tx, context, period),
  };
}

async function giftsOf(tx: Tx, { actor }: Context, days: Period & { timeZone: string }) {
  const { fromOn, throughOn: toOn } = days;
  const rows = await listGiftsBetween(tx, actor.storehouseId, { fromOn, toOn });
  return { ...summaryOf(rows, actor.currency), ...(await countReceipts(tx, actor.storehouseId, days)) };
}

/** What the store lost; what households threw away at home is theirs. */
async function lostOf(tx: Tx, storehouseId: string, { fromOn, throughOn: toOn }: Period) {
  const { commonId, unassignedId } = await loadHouseOwners(tx, storehouseId);
  const whose = { storehouseId, ownerIds: [commonId, unassignedId] };
  const { openingGrams, flows } = await sumCrossings(tx, whose, { fromOn, toOn });
  return yearOfMass(openingGrams, flows).lost;
}

/** The trial balance of the last day, and the store fund on its way there: what came in and went out, undoings too. */
async function moneyOf(tx: Tx, storehouseId: string, { fromOn, throughOn }: Period) {
  const before = await listMoneyTotals(tx, storehouseId, addDays(fromOn, -1));
  const after = await listMoneyTotals(tx, storehouseId, throughOn);
  const fundOf = (totals: typeof after) => {
    const fund = totals.filter(({ kind }) => kind === 'store_fund');
    return { came: sumOf(fund.map(({ outflow }) => outflow)), went: sumOf(fund.map(({ inflow }) => inflow)) };
  };
  const [opening, closing] = [fundOf(before), fundOf(after)];
  return {
    balance: trialBalance(after),
    fund: {
      openingMinorUnits: opening.came - opening.went,
      cameMinorUnits: closing.came - opening.came,
      wentMinorUnits: closing.went - opening.went,
      closingMinorUnits: closing.came - closing.went,
    },
  };
}

/** How often each duty looked. What it looked at and why is for the reviewer, on the screen. */
async function looksOf(tx: Tx, { actor }: Context, { fromOn, throughOn }: Period) {
  const span = { from: fromOn, to: throughOn, timeZone: actor.timeZone };
  const rows = await sumLooks(tx, actor.storehouseId, span);
  return [...new Set(rows.map(({ duties }) => duties))].map((duties) => ({
    duties,
    looks: sumOf(rows.filter((row) => row.duties === duties).map(({ looks }) => looks)),
  }));
}

/** What was counted in the period, and each difference with what it is worth at its lot's landed cost. */
async function countsOf(tx: Tx, { actor }: Context, { fromOn, throughOn }: Period) {
  const { storehouseId, timeZone } = actor;
  const stock = await listCommonStock(tx, storehouseId);
  const days = { fromOn, toOn: throughOn, timeZone };
  const counted = await listCounts(tx, storehouseId, { limit: WHOLE_LIST, days });
  const differing = counted.flatMap(({ count }) => {
    const of = stock.find(({ accountId }) => accountId === count.accountId);
    const differenceGrams = count.countedGrams - count.bookGrams;
    return of === undefined || differenceGrams === 0 ? [] : [{ count, of, differenceGrams }];
  });
  const inOrder = differing.toReversed();
  const worths = await loadWorths(
    ...([tx, storehouseId] as const),
    inOrder.map(({ of, differenceGrams }) => ({ lotId: of.lotId, grams: differenceGrams })),
  );
  const differences = inOrder.map(({ count, of, differenceGrams }, at) => ({
    ...{ code: of.code, foodEn: of.foodEn, foodEs: of.foodEs, differenceGrams },
    ...{ bookGrams: count.bookGrams, countedGrams: count.countedGrams, isBooked: count.entryId !== null },
    minorUnits: worths[at] ?? 0,
  }));
  return { counted: counted.length, differences };
}

/** What was decided about one household alone is told as a sum. Reasons are written for the books' duties, and stay there. */
async function exceptionsOf(tx: Tx, { actor }: Context, { fromOn, throughOn: toOn }: Period) {
  const span = { fromOn, toOn, timeZone: actor.timeZone };
  const corrections = await listCorrections(tx, actor.storehouseId, span);
  const overrides = await listOverrides(tx, actor.storehouseId, span);
  const kinds = [...new Set(overrides.map(({ kind }) => kind))];
  return {
    corrections: corrections.map(({ entryNo, onDay, by, undoneEntryNo, minorUnits }) => ({
      ...{ entryNo, onDay, by, undoneEntryNo, minorUnits },
    })),
    overrides: kinds.map((kind) => {
      const of = overrides.filter((override) => override.kind === kind);
      const isMoney = of.some(({ minorUnits }) => minorUnits !== null);
      const minorUnits = isMoney ? sumOf(of.map((override) => Math.abs(override.minorUnits ?? 0))) : null;
      return { kind, count: of.length, minorUnits };
    }),
  };
}
