import type { Tx } from '@sheafbook/db';
import { commonStockCounted, reweighed } from '@sheafbook/ledger';
import { assert, sumOf } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadOutsideVessels } from '../storehouse/queries.ts';
import {
  insertCount,
  listCommonStock,
  listCounts,
  loadCommonStock,
  loadLotValues,
  lockCount,
  setBooked,
} from './queries.ts';
import type { CountBooking, StockCountQuery, StockCountWish } from './schema.ts';
import { worthOf } from './worth.ts';

type Difference = { readonly lotId: string; readonly grams: number };

/** What differences in lots' common stock are worth in the book, one by one; below zero when grams are missing. */
export async function loadWorths(
  tx: Tx,
  storehouseId: string,
  differences: readonly Difference[],
): Promise<number[]> {
  const lotIds = differences.map(({ lotId }) => lotId);
  const values = await loadLotValues(tx, storehouseId, lotIds);
  return differences.map(({ lotId, grams }) => {
    const value = values.get(lotId);
    assert(value, 'a value is read for each lot');
    return worthOf(value, grams);
  });
}

export async function loadWorth(tx: Tx, storehouseId: string, difference: Difference): Promise<number> {
  return sumOf(await loadWorths(tx, storehouseId, [difference]));
}

/** Common stock as the book has it, with what was counted of it last and what the difference is worth. */
export function readCommonStock(context: Context) {
  const { storehouseId, currency } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const stock = await listCommonStock(tx, storehouseId);
      const counts = await listCounts(tx, storehouseId, { limit: WHOLE_LIST });
      const lotIds = stock.map(({ lotId }) => lotId);
      const values = await loadLotValues(tx, storehouseId, lotIds);
      return {
        currency,
        stock: stock.map((row) => ({
          row,
          value: values.get(row.lotId) ?? null,
          last: counts.find(({ count }) => count.accountId === row.accountId) ?? null,
        })),
      };
    },
    { isReadOnly: true },
  );
}

/** Writes down what was counted, beside what the book said at that moment. Nothing is posted by it. */
export function countStock(context: Context, wish: StockCountWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const stock = await loadCommonStock(tx, storehouseId, wish.accountId);
    const stockCountId = newId(context);
    await insertCount(tx, {
      ...{ storehouseId, stockCountId, accountId: stock.accountId, note: wish.note },
      bookGrams: stock.grams,
      countedGrams: wish.countedGrams,
      countedBy: personId,
      countedAt: context.now(),
    });
    return lockCount(tx, storehouseId, stockCountId);
  });
}

export function readCounts(context: Context, query: StockCountQuery) {
  return withTx(context, (tx) => listCounts(tx, context.actor.storehouseId, query), { isReadOnly: true });
}

/**
 * Books the difference that a count found: the grams to or from the unexplained, their cost to or from the losses. Once
 * for each count, and only while the book still says what it said when it was counted.
 */
export function bookCount(context: Context, countId: string, { reason }: CountBooking) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const count = await lockCount(tx, storehouseId, countId);
    if (count.entryId !== null)
      throw new Problem('already-there', { detail: 'This count is booked already.' });
    if (count.countedGrams === count.bookGrams)
      throw new Problem('nothing-to-post', { detail: 'The count met the book to the gram.' });
    const stock = await loadCommonStock(tx, storehouseId, count.accountId);
    if (stock.grams !== count.bookGrams)
      throw fieldProblem(
        'stale-version',
        'countedGrams',
        'Something was taken or brought since it was counted. Count it again.',
      );
    const differenceMinorUnits = await loadWorth(tx, storehouseId, {
      ...{ lotId: stock.lotId, grams: count.countedGrams - count.bookGrams },
    });
    const vesselIdOf = await loadOutsideVessels(tx, storehouseId);
    const drafts = [
      ...reweighed({
        lotId: stock.lotId,
        vesselId: stock.vesselId,
        unexplainedVesselId: vesselIdOf('unexplained'),
        owners: [{ ownerId: stock.ownerId, bookedGrams: stock.grams }],
        weighedGrams: count.countedGrams,
      }),
      ...commonStockCounted({ causeId: stock.lotId, differenceMinorUnits }),
    ];
    const posted = await postEntry(tx, context, {
      what: 'stock-counted',
      onDay: todayOf(context),
      subjectId: count.stockCountId,
      note: reason,
      drafts,
    });
    // Posting waited for whoever was at the same stock: a difference that another count booked meanwhile is not booked twice.
    if ((await loadCommonStock(tx, storehouseId, count.accountId)).grams !== count.countedGrams)
      throw fieldProblem(
        'stale-version',
        'countedGrams',
        'Something was taken or brought since it was counted. Count it again.',
      );
    await setBooked(tx, count, posted.entryId);
    return lockCount(tx, storehouseId, countId);
  });
}
