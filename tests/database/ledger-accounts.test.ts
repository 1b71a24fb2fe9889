import {
  bagLanded,
  clearingAccount,
  debitCredit,
  guardOf,
  householdAccount,
  MONEY_KINDS,
  moneyAccount,
  OUTSIDE_KINDS,
  poured,
  storeFundAccount,
  takenToEat,
  tillAccount,
} from '@sheafbook/ledger';
import type { Sql } from 'postgres';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Context } from '../../apps/api/src/platform/context.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy } from '../support/buy.ts';
import { type TestBooks, theBooks } from '../support/money-books.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import {
  aContext,
  aKitchen,
  aLot,
  aVessel,
  balanceOfAccount,
  postDrafts,
  type TestLot,
} from '../support/posting.ts';
import { databaseRefusal as refusal, asApp as runAsApp } from '../support/refusal.ts';

// Decisions 6.1 to 6.15 of the ledger notes, each on the app's own unprivileged role.
let app: TestApp;
let books: TestBooks;
let context: Context;
let lot: TestLot;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
  context = aContext(app, books, books.birchall);
  lot = await aLot(context);
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
const bag = () => ({ lotId: lot.lotId, bagVesselId: lot.bagId, unassignedOwnerId: lot.unassignedId });
const landed = (amountGrams: number) =>
  bagLanded({ ...bag(), supplierVesselId: lot.outside.supplier, amountGrams });

test.for(MONEY_KINDS)('6.1: an account of kind %s takes the guard of its kind and no other', async (kind) => {
  const fitting = guardOf({ kind, ownerId: books.corran.householdId });
  for (const guard of ['none', 'not_below', 'not_above']) {
    const made = asApp(
      (
        sql,
      ) => sql`insert into book.account (storehouse_id, unit_id, unit_kind, kind, owner_id, cause_id, guard)
        select storehouse_id, unit_id, kind, ${kind}, ${books.corran.householdId}, ${books.corran.householdId}, ${guard}
        from book.unit where kind = 'currency'`,
    );
    const expected = guard === fitting ? {} : { code: '23514', constraint: 'account_guard_fits_kind' };
    expect(await refusal(made)).toEqual(expected);
  }
});

test('a kitchen holds its own household’s grams alone', async () => {
  await aKitchen(context, books.dell.householdId);
  const made = (ownerId: string) =>
    asApp(
      (sql) => sql`insert into book.account (storehouse_id, unit_id, unit_kind, kind, vessel_id, vessel_kind,
          owner_id, guard)
        values (${books.storehouseId}, ${lot.lotId}, 'lot', 'mass', ${books.dell.householdId}, 'kitchen', ${ownerId},
          'not_below')`,
    );
  const constraint = 'account_kitchen_is_its_owners';
  expect(await refusal(made(books.corran.householdId))).toEqual({ code: '23514', constraint });
  expect(await refusal(made(books.dell.householdId))).toEqual({});
});

test.for(['bag', 'container', 'kitchen', ...OUTSIDE_KINDS] as const)(
  '6.1: grams in the vessel "%s" take the guard of that place and no other',
  async (vesselKind) => {
    const isInside = vesselKind === 'bag' || vesselKind === 'container' || vesselKind === 'kitchen';
    const fitting = guardOf(
      { kind: 'mass', ownerId: books.corran.householdId },
      isInside ? null : vesselKind,
    );
    if (vesselKind === 'container') await aVessel(context, 'container');
    if (vesselKind === 'kitchen') await aKitchen(context, books.corran.householdId);
    for (const guard of ['none', 'not_below', 'not_above']) {
      const made = asApp(
        (
          sql,
        ) => sql`insert into book.account (storehouse_id, unit_id, unit_kind, kind, vessel_id, vessel_kind,
            owner_id, guard)
          select ${books.storehouseId}, ${lot.lotId}, 'lot', 'mass', vessel_id, kind, ${books.corran.householdId}, ${guard}
          from book.vessel where kind = ${vesselKind}
            and (kind <> 'kitchen' or vessel_id = ${books.corran.householdId}) limit 1`,
      );
      const expected = guard === fitting ? {} : { code: '23514', constraint: 'account_guard_fits_kind' };
      expect(await refusal(made)).toEqual(expected);
    }
  },
);

test('6.2: a closed clearing account stays at nothing; what passes through it nets out within one entry', async () => {
  const buy = await aBuy(app, books);
  const clearing = clearingAccount(buy.buyId);
  const cost = debitCredit({ debit: clearing, credit: storeFundAccount(), amountMinorUnits: 500 });
  const charge = debitCredit({
    debit: householdAccount(books.dell.householdId),
    credit: clearing,
    amountMinorUnits: 500,
  });
  await postDrafts(context, [cost, charge]);
  const close = () =>
    app.sql.begin(async (sql) => {
      await sql`select set_config('app.storehouse', ${books.storehouseId}, true)`;
      return sql`select book.close_account(account_id) as closed from book.account
        where kind = 'buy_clearing' and cause_id = ${buy.buyId}`;
    });
  expect(await close()).toMatchObject([{ closed: true }]);
  for (const half of [[cost], [charge]])
    expect(await refusal(postDrafts(context, half))).toEqual({
      code: '23514',
      constraint: 'account_closed_at_zero',
    });
  await postDrafts(context, [cost, charge]);
  expect(await balanceOfAccount(app, { kind: 'buy_clearing', causeId: buy.buyId })).toBe(0);
});

test('6.2: an account that is not at nothing can’t be closed', async () => {
  const buy = await aBuy(app, books);
  const cost = debitCredit({
    debit: clearingAccount(buy.buyId),
    credit: storeFundAccount(),
    amountMinorUnits: 500,
  });
  await postDrafts(context, [cost]);
  const closed = asApp(
    (sql) => sql`select book.close_account(account_id) from book.account
      where kind = 'buy_clearing' and cause_id = ${buy.buyId}`,
  );
  expect(await refusal(closed)).toEqual({ code: '23514', constraint: 'account_closed_at_zero' });
  const fund = await asApp(
    (sql) => sql`select book.close_account(account_id) as closed from book.account where kind = 'store_fund'`,
  );
  expect([...fund]).toEqual([{ closed: null }]); // only what clears may be closed at all
});

test('6.4: the guard works in the order of recording; an offline batch goes in as one netted entry', async () => {
  const own = await aLot(context);
  const canId = await aVessel(context, 'container');
  const into = {
    lotId: own.lotId,
    bagVesselId: own.bagId,
    containerVesselId: canId,
    ownerId: own.unassignedId,
  };
  const pour = poured({ ...into, amountGrams: 500 });
  const arrival = bagLanded({
    lotId: own.lotId,
    bagVesselId: own.bagId,
    unassignedOwnerId: own.unassignedId,
    supplierVesselId: own.outside.supplier,
    amountGrams: 500,
  });
  // Written down first, though it happened a day after the bag came.
  expect(await refusal(postDrafts(context, pour, { onDay: '2026-09-12' }))).toEqual({
    code: '23514',
    constraint: 'account_never_below_zero',
  });
  await postDrafts(context, [...pour, ...arrival], { onDay: '2026-09-12' });
  expect(await balanceOfAccount(app, { kind: 'mass', vesselId: canId })).toBe(500);
});

test('6.5: a closed period takes no entry, whatever way it is posted', async () => {
  const other = await anotherStorehouse(app, 'Cedar Lane Storehouse');
  const [person] = await app.admin<
    { person_id: string; household_id: string }[]
  >`select person_id, household_id
    from book.person where storehouse_id = ${other.storehouseId}`;
  const household = {
    personId: person?.person_id ?? '',
    householdId: person?.household_id ?? '',
    caller: other.coordinator,
  };
  const there = aContext(app, other, household);
  const cost = debitCredit({
    debit: moneyAccount('bank_charges'),
    credit: tillAccount('bank'),
    amountMinorUnits: 5,
  });
  await postDrafts(there, [cost], { onDay: '2026-08-31' });
  await app.sql.begin(async (sql) => {
    await sql`select set_config('app.storehouse', ${other.storehouseId}, true)`;
    await sql`select book.close_period('2026-08-31')`;
    const earlier = await sql`select book.close_period('2026-07-31') as closed`;
    expect([...earlier]).toEqual([{ closed: null }]);
  });
  expect(await refusal(postDrafts(there, [cost], { onDay: '2026-08-31' }))).toEqual({
    code: '23514',
    constraint: 'entry_in_open_period',
  });
  await postDrafts(there, [cost], { onDay: '2026-09-01' });
  await postDrafts(context, [payment(1)], { onDay: '2026-08-31' }); // one storehouse's period is no other's
});

test('6.9: grams always belong to somebody; "nobody yet" is an owner with a row', async () => {
  const ownerless = asApp(
    (
      sql,
    ) => sql`insert into book.account (storehouse_id, unit_id, unit_kind, kind, vessel_id, vessel_kind, guard)
      values (${books.storehouseId}, ${lot.lotId}, 'lot', 'mass', ${lot.bagId}, 'bag', 'not_below')`,
  );
  expect(await refusal(ownerless)).toEqual({ code: '23514', constraint: 'account_owner_fits_kind' });
});

test('6.13: a storehouse has one currency, for good', async () => {
  const second = asApp(
    (sql) =>
      sql`insert into book.unit (storehouse_id, kind, currency) values (${books.storehouseId}, 'currency', 'CAD')`,
  );
  expect(await refusal(second)).toEqual({ code: '23505', constraint: 'unit_one_currency' });
  const changed = asApp((sql) => sql`update book.storehouse set currency = 'CAD'`);
  expect((await refusal(changed)).code).toBe('42501');
  const mixed = asApp((sql) => sql`update book.unit set currency = 'CAD' where kind = 'currency'`);
  expect((await refusal(mixed)).code).toBe('42501');
});

test('6.15: amounts and totals stay whole numbers that a double holds', async () => {
  const most = 2 ** 53 - 1;
  const fund = storeFundAccount();
  const half = debitCredit({ debit: moneyAccount('repairs'), credit: fund, amountMinorUnits: 2 ** 52 });
  const twice = postDrafts(context, [half, half]);
  expect(await refusal(twice)).toEqual({ code: '23514', constraint: 'amount_exact_in_a_double' });
  const [units] = await app.admin<{ unit_id: string }[]>`select unit_id from book.unit
    where storehouse_id = ${books.storehouseId} and kind = 'currency'`;
  await postDrafts(context, [payment(1)]);
  const pair = await app.admin<{ account_id: string }[]>`select account_id from book.account
    where storehouse_id = ${books.storehouseId} and kind in ('bank', 'store_fund') order by kind`;
  const [bankId = '', fundId = ''] = pair.map((row) => row.account_id);
  for (const amount of [String(most + 1), '0', '-5'])
    expect(
      (
        await refusal(
          asApp(
            (
              sql,
            ) => sql`select book.post_entry('beyond', '2026-09-15', now(), ${books.birchall.personId}, null, null,
              null, null, '', ${[units?.unit_id ?? '']}::uuid[], ${[fundId]}::uuid[], ${[bankId]}::uuid[],
              ${[amount]}::bigint[])`,
          ),
        )
      ).code,
    ).toBe('23514');
});

test('a movement has one unit, two different sides, and stays in its storehouse', async () => {
  const { unassignedId, outside, lotId, bagId } = lot;
  await postDrafts(context, landed(100));
  const eaten = takenToEat({
    lotId,
    fromVesselId: bagId,
    outsideVesselId: outside.eaten,
    ownerId: unassignedId,
    amountGrams: 40,
  });
  await postDrafts(context, eaten);
  const [money] = await app.admin<{ account_id: string; unit_id: string }[]>`select account_id, unit_id
    from book.account where storehouse_id = ${books.storehouseId} and kind = 'bank'`;
  const [mass] = await app.admin<{ account_id: string; unit_id: string }[]>`select account_id, unit_id
    from book.account where unit_id = ${lotId} and vessel_id = ${bagId}`;
  const post = (from: string, to: string) =>
    asApp(
      (
        sql,
      ) => sql`select book.post_entry('odd', '2026-09-15', now(), ${books.birchall.personId}, null, null, null,
        null, '', ${[money?.unit_id ?? '']}::uuid[], ${[from]}::uuid[], ${[to]}::uuid[], ${[1]}::bigint[])`,
    );
  const [moneyId = '', massId = ''] = [money?.account_id, mass?.account_id];
  expect(await refusal(post(massId, moneyId))).toMatchObject({
    code: '23503',
    constraint: 'movement_source_fk',
  });
  expect(await refusal(post(moneyId, moneyId))).toMatchObject({
    code: '23514',
    constraint: 'movement_goes_somewhere',
  });
});

test('an entry without movements is none', async () => {
  const none = asApp(
    (
      sql,
    ) => sql`select book.post_entry('nothing', '2026-09-15', now(), ${books.birchall.personId}, null, null, null,
      null, '', '{}', '{}', '{}', '{}')`,
  );
  expect(await refusal(none)).toEqual({ code: '23514', constraint: 'entry_has_movements' });
});
