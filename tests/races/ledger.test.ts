import {
  bagLanded,
  debitCredit,
  householdAccount,
  type MovementDraft,
  storeFundAccount,
  takenToEat,
  tillAccount,
} from '@sheafbook/ledger';
import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Context } from '../../apps/api/src/platform/context.ts';
import { postEntry } from '../../apps/api/src/platform/post-entry.ts';
import { findPostgresError } from '../../apps/api/src/platform/to-problem.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { type TestBooks, theBooks } from '../support/money-books.ts';
import { aContext, aLot, balanceOfAccount, postDrafts } from '../support/posting.ts';

let app: TestApp;
let books: TestBooks;
let context: Context;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
  context = aContext(app, books, books.birchall);
});
afterAll(() => app.close());

const times = <Result>(count: number, work: (position: number) => Promise<Result>) =>
  Promise.allSettled(Array.from({ length: count }, (_, position) => work(position)));

/** What became of each call: `done`, or the constraint or code that refused it. */
const outcomes = (settled: readonly PromiseSettledResult<unknown>[]) =>
  settled.map((result) => {
    if (result.status === 'fulfilled') return 'done';
    const refusal = findPostgresError(result.reason);
    return refusal?.constraint_name ?? refusal?.code ?? String(result.reason);
  });

/** One attempt, without the retry that would hide a deadlock. */
const postOnce = (drafts: readonly MovementDraft[]) =>
  app.db.transaction(async (tx) => {
    await tx.execute(sql`select set_config('app.storehouse', ${books.storehouseId}, true)`);
    return postEntry(tx, context, { what: 'raced', onDay: '2026-09-15', drafts });
  });

const transfer = (from: string, to: string, amountMinorUnits = 1) =>
  debitCredit({ debit: householdAccount(to), credit: householdAccount(from), amountMinorUnits });

test('fifty who take from one bag at once never take more than it holds', async () => {
  const { lotId, bagId, outside, unassignedId: ownerId } = await aLot(context);
  const bag = { lotId, bagVesselId: bagId, unassignedOwnerId: ownerId, supplierVesselId: outside.supplier };
  await postDrafts(context, bagLanded({ ...bag, amountGrams: 22_680 }));
  const take = () =>
    postDrafts(
      context,
      takenToEat({ lotId, fromVesselId: bagId, outsideVesselId: outside.eaten, ownerId, amountGrams: 1000 }),
    );
  const results = outcomes(await times(50, take));
  expect(results.filter((result) => result === 'done')).toHaveLength(22); // 22 kg of 22.68 kg
  expect(new Set(results)).toEqual(new Set(['done', 'account_never_below_zero']));
  expect(await balanceOfAccount(app, { kind: 'mass', vesselId: bagId })).toBe(680);
});

test('transfers that cross never wait for each other in a circle', async () => {
  const households = [books.birchall, books.corran, books.dell].map(({ householdId }) => householdId);
  const [a = '', b = '', c = ''] = households;
  const crossing = [
    [transfer(a, b), transfer(b, c)],
    [transfer(c, b), transfer(b, a)],
    [transfer(b, a), transfer(c, a)],
  ];
  const results = await times(60, (position) => postOnce(crossing[position % 3] ?? []));
  expect(new Set(outcomes(results))).toEqual(new Set(['done']));
  const balances = await Promise.all(
    households.map((ownerId) => balanceOfAccount(app, { kind: 'household', ownerId })),
  );
  // Twenty times each: a to b to c, c to b to a, and one from b and one from c to a.
  expect(balances).toEqual([-20 + 20 + 40, 0 + 0 - 20, 20 - 20 - 20]);
});

test('6.6: entry numbers run without a gap in the order of commit, refused posts leaving none', async () => {
  const pay = debitCredit({ debit: tillAccount('bank'), credit: storeFundAccount(), amountMinorUnits: 1 });
  const overdraw = debitCredit({
    debit: tillAccount('bank'),
    credit: tillAccount('cash_tin'),
    amountMinorUnits: 1,
  });
  let isPosting = true;
  const looks = (async () => {
    const seen: { count: number; last: number }[] = [];
    while (isPosting) {
      const [row] = await app.admin<{ count: number; last: number }[]>`select count(*)::int as count,
        coalesce(max(entry_no), 0)::int as last from book.entry where storehouse_id = ${books.storehouseId}`;
      if (row) seen.push({ count: row.count, last: row.last });
    }
    return seen;
  })();
  const results = await times(60, (position) => postOnce([position % 3 === 0 ? overdraw : pay]));
  isPosting = false;
  expect(outcomes(results).filter((result) => result === 'done')).toHaveLength(40);
  const seen = await looks;
  expect(seen.length).toBeGreaterThan(1);
  // Whoever looks at any moment sees 1 to n: a number is there only once all before it are.
  expect(seen.filter(({ count, last }) => count !== last)).toEqual([]);
  const [state] = await app.admin`select b.last_entry_no = (select max(entry_no) from book.entry e
    where e.storehouse_id = b.storehouse_id) as same from book.book_state b
    where b.storehouse_id = ${books.storehouseId}`;
  expect(state).toEqual({ same: true });
});

test('6.10: accounts that many want at once are made once', async () => {
  const { householdId } = await aHousehold(app, books, 'Newcomer');
  const pay = debitCredit({
    debit: tillAccount('bank'),
    credit: householdAccount(householdId),
    amountMinorUnits: 1,
  });
  const results = await times(20, () => postOnce([pay]));
  expect(new Set(outcomes(results))).toEqual(new Set(['done']));
  const accounts = await app.admin`select inflow, outflow from book.account where owner_id = ${householdId}`;
  expect([...accounts]).toEqual([{ inflow: '0', outflow: '20' }]);
});

test('6.5: no entry slips into a period behind its closing', async () => {
  const onDay = '2026-09-14';
  const pay = debitCredit({ debit: tillAccount('bank'), credit: storeFundAccount(), amountMinorUnits: 1 });
  const count = async () => {
    const [row] = await app.admin<{ count: number }[]>`select count(*)::int as count from book.entry
      where storehouse_id = ${books.storehouseId} and on_day <= ${onDay}`;
    return row?.count;
  };
  const closing = books.treasurer.post(`${books.path}/periods`, { throughOn: onDay }).then(async (answer) => {
    expect(answer.status).toBe(201);
    return count();
  });
  const results = outcomes(await times(30, () => postDrafts(context, [pay], { onDay })));
  const wrong = results.filter((result) => result !== 'done' && result !== 'entry_in_open_period');
  expect(wrong).toEqual([]);
  expect(await closing).toBe(await count()); // once the closing is acknowledged, that period grows no more
});

test('6.17: one command sent twenty times at once is carried out once', async () => {
  const { householdId } = await aHousehold(app, books, 'Impatient');
  const wish = { householdId, minorUnits: 1234, till: 'bank', isKnownDuplicate: true };
  const send = () =>
    books.treasurer.post(`${books.path}/payments`, wish, { 'Idempotency-Key': 'pressed-twenty-times' });
  const answers = await Promise.all(Array.from({ length: 20 }, send));
  expect(new Set(answers.map((answer) => bodyOf(answer, 201).entryNo)).size).toBe(1);
  expect(answers.filter(({ headers }) => headers.get('Idempotent-Replay') === 'true')).toHaveLength(19);
  expect(await balanceOfAccount(app, { kind: 'household', ownerId: householdId })).toBe(-1234);
});
