import { debitCredit, householdAccount, tillAccount } from '@sheafbook/ledger';
import type { Sql } from 'postgres';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Context } from '../../apps/api/src/platform/context.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { type TestBooks, theBooks } from '../support/money-books.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aContext, postDrafts } from '../support/posting.ts';
import { databaseRefusal as refusal, asApp as runAsApp } from '../support/refusal.ts';

// Points 2a to 2g of the ledger notes, each on the app's own unprivileged role.
let app: TestApp;
let books: TestBooks;
let context: Context;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
  context = aContext(app, books, books.birchall);
});
afterAll(() => app.close());

const asApp = <Result>(work: (sql: Sql) => Promise<Result>, storehouseId = books.storehouseId) =>
  runAsApp(app, storehouseId, work);
const payment = (amountMinorUnits: number) =>
  debitCredit({
    debit: tillAccount('bank'),
    credit: householdAccount(books.dell.householdId),
    amountMinorUnits,
  });
test('2a: a connection that was used before sees nothing once no storehouse is set, and does not fail', async () => {
  const sql = await app.sql.reserve();
  try {
    await sql`begin`;
    await sql`select set_config('app.storehouse', ${books.storehouseId}, true)`;
    expect(await sql`select from book.household`).not.toHaveLength(0);
    await sql`commit`;
    const [setting] = await sql`select current_setting('app.storehouse', true) as value`;
    expect(setting).toEqual({ value: '' }); // what a bare ::uuid would stumble over
    expect(await sql`select from book.household`).toHaveLength(0);
  } finally {
    sql.release();
  }
});

test('2b: every index of the book compares by operators that row-level security lets through', async () => {
  const leaky = await app.admin`
    select c.relname as index, a.attname as column, o.oprname as operator
    from pg_index i join pg_class c on c.oid = i.indexrelid join pg_namespace n on n.oid = c.relnamespace
    cross join lateral unnest(i.indclass::oid[]) with ordinality as k(class, position)
    join pg_opclass oc on oc.oid = k.class
    join pg_amop am on am.amopfamily = oc.opcfamily and am.amoplefttype = oc.opcintype
      and am.amoprighttype = oc.opcintype
    join pg_operator o on o.oid = am.amopopr join pg_proc p on p.oid = o.oprcode
    join pg_attribute a on a.attrelid = c.oid and a.attnum = k.position
    where n.nspname = 'book' and not p.proleakproof
      and not i.indisexclusion`; // an exclusion is checked by the database itself; no query looks through its index
  expect([...leaky]).toEqual([]);
});

test.for([
  { side: 'destination_id', index: 'movement_by_destination' },
  { side: 'source_id', index: 'movement_by_source' },
])('2b: a statement finds its movements by $index as the app, policies and all', async ({ side, index }) => {
  await postDrafts(context, [payment(100)]);
  const plan = await asApp(async (sql) => {
    await sql`set local enable_seqscan = off`;
    const [account] = await sql<{ account_id: string }[]>`select account_id from book.account
      where kind = 'household' and owner_id = ${books.dell.householdId}`;
    const rows = await sql`explain select m.entry_id, m.amount from book.movement m
      where m.storehouse_id = ${books.storehouseId} and ${sql(side)} = ${account?.account_id ?? ''}`;
    return rows.map((row) => row['QUERY PLAN']).join('\n');
  });
  expect(plan).toContain(index);
  expect(plan).toMatch(new RegExp(`Index Cond: .*${side} = `));
});

test('2c: the app writes no entry, no movement and no total of its own', async () => {
  for (const forge of [
    (sql: Sql) => sql`insert into book.entry (storehouse_id, entry_no, what, on_day, recorded_at, person_id)
      values (${books.storehouseId}, 999, 'forged', '2026-09-15', now(), ${books.birchall.personId})`,
    (
      sql: Sql,
    ) => sql`insert into book.movement (storehouse_id, entry_id, line, unit_id, source_id, destination_id, amount)
      select storehouse_id, entry_id, 9::smallint, unit_id, source_id, destination_id, 5 from book.movement limit 1`,
    (sql: Sql) => sql`update book.account set inflow = inflow + 5 where kind = 'bank'`,
    (sql: Sql) => sql`update book.account set closed = true where kind = 'bank'`,
    (sql: Sql) => sql`insert into book.account (storehouse_id, unit_id, unit_kind, kind, guard, inflow)
      select storehouse_id, unit_id, kind, 'bank_charges', 'none', 500 from book.unit where kind = 'currency'`,
    (sql: Sql) => sql`update book.book_state set last_entry_no = 0, closed_through = null`,
  ])
    expect((await refusal(asApp(forge))).code).toBe('42501');
});

test('2c: posting moves nothing in another storehouse, whoever names its accounts', async () => {
  await postDrafts(context, [payment(100)]);
  const other = await anotherStorehouse(app);
  const [bank] = await app.admin<{ account_id: string; unit_id: string }[]>`select account_id, unit_id
    from book.account where storehouse_id = ${books.storehouseId} and kind = 'bank'`;
  const [household] = await app.admin<{ account_id: string }[]>`select account_id from book.account
    where storehouse_id = ${books.storehouseId} and kind = 'household' and owner_id = ${books.dell.householdId}`;
  const theft = asApp(
    (
      sql,
    ) => sql`select book.post_entry('theft', '2026-09-15', now(), ${books.birchall.personId}, null, null, null,
      null, '', ${[bank?.unit_id ?? '']}::uuid[], ${[bank?.account_id ?? '']}::uuid[],
      ${[household?.account_id ?? '']}::uuid[], ${[100]}::bigint[])`,
    other.storehouseId,
  );
  expect(await refusal(theft)).toEqual({ code: '23503', constraint: 'movement_source_fk' });
});

test('2d: row-level security is on for every table of the book, and forced on none, so that migrations see rows', async () => {
  const tables = await app.admin<{ relname: string; on: boolean; forced: boolean }[]>`
    select relname, relrowsecurity as on, relforcerowsecurity as forced from pg_class c
    join pg_namespace n on n.oid = c.relnamespace where n.nspname = 'book' and c.relkind = 'r'`;
  expect(tables.length).toBeGreaterThan(40);
  expect(tables.filter(({ on, forced }) => !on || forced)).toEqual([]);
  const admin = await app.admin.reserve();
  try {
    await admin`begin`;
    await admin`set local role sheafbook_owner`;
    const touched = await admin`update book.household set version = version`;
    expect(touched.count).toBeGreaterThan(0);
    await admin`rollback`;
  } finally {
    admin.release();
  }
});

test('2g: a refusal carries the name of what it broke', async () => {
  const empty = postDrafts(context, [
    debitCredit({ debit: tillAccount('bank'), credit: tillAccount('cash_tin'), amountMinorUnits: 1 }),
  ]);
  expect(await refusal(empty)).toEqual({ code: '23514', constraint: 'account_never_below_zero' });
  const stranger = postDrafts(context, [
    debitCredit({
      debit: tillAccount('bank'),
      credit: householdAccount(books.storehouseId),
      amountMinorUnits: 1,
    }),
  ]);
  expect(await refusal(stranger)).toEqual({ code: '23503', constraint: 'account_owner_fk' });
});

test('2g: the book is append-only: no update, delete or truncate', async () => {
  for (const attempt of [
    (sql: Sql) => sql`update book.entry set note = 'changed'`,
    (sql: Sql) => sql`update book.movement set amount = amount + 1`,
    (sql: Sql) => sql`delete from book.entry`,
    (sql: Sql) => sql`delete from book.movement`,
    (sql: Sql) => sql`delete from book.account`,
    (sql: Sql) => sql`truncate book.movement`,
    (sql: Sql) => sql`truncate book.entry cascade`,
  ])
    expect((await refusal(asApp(attempt))).code).toBe('42501');
});
