import type { CashCountRow } from '@sheafbook/db/tables';
import { piecesOf, sumPieces, tillAccount, tinDiffers } from '@sheafbook/ledger';
import { formatMoney } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { lockBook } from '../../platform/lock-book.ts';
import { newId } from '../../platform/new-id.ts';
import { pageOf } from '../../platform/paging.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBalance } from '../money/queries.ts';
import { postMoney } from '../money/use-cases.ts';
import { loadPresentPerson } from '../person/queries.ts';
import { insertCount, listCounts } from './queries.ts';
import type { CountsQuery, CountWish } from './schema.ts';

/** What the book says is in the tin, and the notes and coins that it may hold. */
export function readTin(context: Context) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => {
    const [last] = await listCounts(tx, storehouseId, { limit: 0 });
    return {
      currency,
      expectedMinorUnits: await loadBalance(tx, storehouseId, tillAccount('cash_tin')),
      pieces: piecesOf(currency),
      last: last ?? null,
    };
  });
}

export function readCounts(context: Context, query: CountsQuery) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => ({
    currency,
    ...pageOf(await listCounts(tx, storehouseId, query), query.limit, ({ count }) => count.cashCountId),
  }));
}
export type CountsReading = Awaited<ReturnType<typeof readCounts>>;

/**
 * Writes a count down. A difference is posted with its reason: too little is a loss, too much a gift of nobody known.
 * The book is held still meanwhile, so that what is counted is compared with what was expected, and not with less.
 */
export function countTin(context: Context, wish: CountWish): Promise<CashCountRow> {
  const { storehouseId, personId, currency } = context.actor;
  const { countedMinorUnits, pieces, reason, countedWithPersonId } = wish;
  refuseWrongSum(wish);
  if (countedWithPersonId === personId)
    throw fieldProblem(
      'invalid-input',
      'countedWithPersonId',
      'You are the first; name somebody else, or nobody.',
    );
  return withTx(context, async (tx) => {
    if (countedWithPersonId !== null) await loadPresentPerson(tx, storehouseId, countedWithPersonId);
    await lockBook(tx);
    const expected = await loadBalance(tx, storehouseId, tillAccount('cash_tin'));
    if (expected !== wish.expectedMinorUnits)
      throw new Problem('stale-version', {
        detail: `Cash came in or went out while you counted: the book says ${formatMoney(expected, currency, 'en')} ${currency} now.`,
        expectedMinorUnits: expected,
      });
    const difference = countedMinorUnits - expected;
    if (difference !== 0 && reason === '')
      throw fieldProblem(
        'invalid-input',
        'reason',
        'The count differs from the book. Say what you know of why.',
      );
    const drafts = tinDiffers({ differenceMinorUnits: difference });
    const onDay = todayOf(context);
    const cashCountId = newId(context);
    const entry = { what: 'cash-counted', onDay, minorUnits: difference, note: reason, drafts };
    const posted =
      difference === 0 ? null : await postMoney(tx, context, { ...entry, subjectId: cashCountId });
    return insertCount(tx, {
      ...{ storehouseId, cashCountId, onDay, expectedMinorUnits: expected, countedMinorUnits, reason },
      ...{ pieces, entryId: posted?.entryId ?? null, countedBy: personId, countedWith: countedWithPersonId },
      countedAt: context.now(),
    });
  });
}

function refuseWrongSum({ pieces, countedMinorUnits }: CountWish): void {
  if (pieces === null) return;
  const isExact = pieces.every(({ eachMinorUnits, count }) =>
    Number.isSafeInteger(eachMinorUnits * count * 40),
  );
  if (!isExact || sumPieces(pieces) !== countedMinorUnits)
    throw fieldProblem('does-not-add-up', 'countedMinorUnits', 'The notes and coins come to another total.');
}
