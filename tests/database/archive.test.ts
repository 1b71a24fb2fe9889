import { Readable } from 'node:stream';
import { administer, splitLines } from '@sheafbook/db';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { listBookTables, orderByReference } from '../../db/src/archive/book-tables.ts';
import { LEFT_BEHIND } from '../../db/src/archive/format.ts';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { archiveOf, COORDINATOR, changed, importInto, sealed } from '../support/archive.ts';
import { bodyOf } from '../support/buy.ts';
import { photographLoan } from '../support/equipment.ts';
import { aHousehold, anInvitation } from '../support/household.ts';
import { bringOver, WHOLE_GROUP } from '../support/import.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aSharedBuy, creditClaims, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { aWorld, type TestWorld } from '../support/world.ts';

// One storehouse with one of everything, a buy that is closed, a household that left, and an entry that was undone.
let app: TestApp;
let storehouse: TestStorehouse;
let world: TestWorld;
let closed: TestSharedBuy;
let lines: string[];
/** A database without a storehouse, and still so after every refusal. */
let empty: TestApp;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  world = await aWorld(app, storehouse);
  closed = await aSharedBuy(app, storehouse, { households: world.buy.households });
  await creditClaims(storehouse, closed);
  bodyOf(await closed.treasurer.post(`${closed.path}/closing`), 201);
  const leaver = await aHousehold(app, storehouse, 'Leavenworth');
  const home = `${storehouse.path}/households/${leaver.householdId}`;
  bodyOf(await leaver.caller.post(`${home}/leaving`, { version: 1 }));
  const paid = { householdId: closed.households.Dell.householdId, minorUnits: 700, till: 'bank' };
  const { entryId } = bodyOf(
    await closed.treasurer.post(`${storehouse.path}/payments`, { ...paid, note: 'left by\u2028two lines' }),
    201,
  );
  const undoing = `${storehouse.path}/entries/${entryId}/reversal`;
  bodyOf(await closed.treasurer.post(undoing, { reason: 'Typed twice.' }), 201);
  await matchOneLine(closed.treasurer, closed.households.Dell.householdId);
  const equipment = WHOLE_GROUP.filter(({ name }) => name === 'equipment.csv');
  const brought = await bringOver(storehouse.coordinator, storehouse.path, equipment);
  const takingBack = `${storehouse.path}/imports/${bodyOf(brought.posted, 201).id}/undoing`;
  bodyOf(await storehouse.coordinator.post(takingBack, { reason: 'The wrong sheet.' }), 201);
  const again = await bringOver(storehouse.coordinator, storehouse.path, equipment);
  bodyOf(again.posted, 201);
  await photographLoan(storehouse, {
    caller: world.buy.households.Dell.caller,
    loanId: world.ids.loan ?? '',
  });
  await insertTheRest();
  await anotherStorehouse(app);
  empty = await openTestApp();
  lines = await archiveOf(app, storehouse.storehouseId);
});
afterAll(() => Promise.all([app.close(), empty.close()]));

/** A line of the bank that was posted, taken back with its entry, and posted again. */
async function matchOneLine(treasurer: Caller, householdId: string): Promise<void> {
  const path = `${storehouse.path}/bank/lines/${world.ids.bankLine}`;
  const answer = 'a neighbour paid';
  bodyOf(await treasurer.post(`${path}/posting`, { as: 'payment', householdId, answer }), 201);
  bodyOf(await treasurer.post(`${path}/undoing`, { reason: 'another household', takesBack: true }), 201);
  bodyOf(await treasurer.post(`${path}/posting`, { as: 'payment', householdId, answer }), 201);
}

/** Straight into the tables that this story leaves empty, so that each has a row to bring. */
async function insertTheRest(): Promise<void> {
  const { storehouseId } = storehouse;
  const { householdId, personId } = world.buy.households.Dell;
  const { admin } = app;
  await admin`insert into book.household_contact (storehouse_id, household_id, phone) values (${storehouseId}, ${householdId}, '555')`;
  await admin`insert into book.household_plan (storehouse_id, household_id) values (${storehouseId}, ${householdId})`;
  await admin`insert into book.household_guideline values (${storehouseId}, ${householdId}, 'grains', 150000)`;
  await admin`insert into book.keying (storehouse_id, what, subject_id, buy_id, household_id, written_at, keyed_at,
      keyed_by, is_entered_for)
    select ${storehouseId}, 'pledge', pledge_id, buy_id, household_id, now() - interval '1 day', now(), ${personId}, true
    from book.pledge limit 1`;
  await admin`insert into book.telling_wish values (${storehouseId}, ${personId}, 'es', 'Europe/Berlin', 8, 20, null,
    true, '{notice}')`;
  await admin`insert into book.telling values (${storehouseId}, ${personId}, 'email', 'digest|2026-09-01', now())`;
  await admin`insert into book.period_signature (storehouse_id, closed_through, duty, person_id, signed_at, digest_sha256)
    select storehouse_id, closed_through, 'coordinator', ${personId}, now(), digest_sha256 from book.period_close limit 1`;
  await admin`insert into book.container_wish (storehouse_id, buy_id, buy_line_id, household_id, position,
      container_kind_id, entered_by)
    select ${storehouseId}, buy_id, buy_line_id, ${householdId}, 1, container_kind_id, ${personId}
    from book.buy_line, book.container_kind limit 1`;
  await admin`insert into book.withdrawal (storehouse_id, buy_id, household_id, stage_then, reason, answer, person_id,
      withdrawn_at)
    select ${storehouseId}, buy_id, ${householdId}, 'gathering', 'moving', '{"takers":[1.50]}', ${personId}, now()
    from book.buy limit 1`;
  await admin`insert into book.bank_balance (storehouse_id, on_day, minor_units, said_by, said_at)
    values (${storehouseId}, '2026-08-31', 600, ${personId}, now())`;
  await admin`insert into book.cash_count (storehouse_id, cash_count_id, on_day, expected_minor_units,
      counted_minor_units, counted_by, counted_at)
    values (${storehouseId}, uuidv7(), '2026-08-31', 0, 0, ${personId}, now())`;
  await admin`insert into book.pick_up_piece select storehouse_id, pick_up_id, bag_id, 5 from book.pick_up, lateral
    (select bag_id from book.bag limit 1) b limit 1`;
  await admin`insert into book.packing_bag (storehouse_id, packing_session_id, bag_id, household_id, brought_grams,
      brought_by, brought_at)
    select storehouse_id, packing_session_id, ${world.ids.bag ?? ''}, ${householdId}, 500, ${personId}, now() from book.packing_session`;
  await admin`insert into book.packing_pour (storehouse_id, packing_session_id, line, serial, household_id, bag_id,
      container_id, target_grams, grams, treatment, entry_id, poured_by, poured_at, recorded_at)
    select storehouse_id, packing_session_id, 1, 1, household_id, bag_id, ${world.ids.container ?? ''}, 500, 500, 'none',
      ${world.ids.entry ?? ''}, ${personId}, now(), now() from book.packing_bag`;
  await admin`insert into book.supply_price values (${storehouseId}, 'absorber-300', 25)`;
  const { entry = '', supply = '' } = world.ids;
  await admin`insert into book.supply_use_by values (${storehouseId}, ${entry}, ${supply}, '2027-06-30')`;
  await admin`insert into book.moisture_change select storehouse_id, ${entry}, bag_id, 120, 110, 500, 494 from book.packing_bag`;
  await admin`insert into book.packing_loss select storehouse_id, ${entry}, packing_session_id, bag_id, household_id, now(), now() from book.packing_bag`;
  await admin`insert into book.session_settlement (storehouse_id, packing_session_id, settled_by, settled_at)
    select storehouse_id, packing_session_id, ${personId}, now() from book.packing_session limit 1`;
  await admin`insert into book.session_cost (storehouse_id, session_settlement_id, position, kind, what, minor_units,
      borne_by)
    select storehouse_id, session_settlement_id, 0, 'sundries', 'tea', 500, 'containers' from book.session_settlement`;
  await admin`insert into book.session_share select storehouse_id, session_settlement_id, 0, ${householdId}, 4, 500 from book.session_settlement`;
  await admin`insert into book.seam_limit
    select storehouse_id, container_kind_id, 110, 120, 55, 62, 120, 130, 55, 10, 9, 'an invented sheet'
    from book.container_kind where kind_code = 'can-no-10'`;
  await admin`insert into book.seal_machine (storehouse_id, name, kind) select storehouse_id, 'Seamer', 'can-seamer' from book.storehouse`;
  await admin`insert into book.seal_check (storehouse_id, seal_machine_id, packing_session_id, line, serial, container_kind_id,
      how, looks_good, faults, passed, suspect_from, suspect_to, checked_by, checked_at, recorded_at, good_until, good_serial)
    select s.storehouse_id, seal_machine_id, packing_session_id, 1, 1, container_kind_id, 'visual', false, '[]', false,
      1, 1, ${personId}, now(), now(), now(), 0
    from book.packing_session s join book.seal_machine using (storehouse_id) join book.seam_limit using (storehouse_id)
    limit 1`;
  await admin`insert into book.seal_hold (storehouse_id, container_id, seal_check_id)
    select storehouse_id, ${world.ids.container ?? ''}, seal_check_id from book.seal_check`;
  await world.buy.households.Dell.caller.get(`${storehouse.path}/appointments`); // what a calendar tells is written down
}

/** Lends a further database with no storehouse in it. */
async function withEmptyApp<Result>(work: (fresh: TestApp) => Promise<Result>): Promise<Result> {
  const fresh = await openTestApp();
  try {
    return await work(fresh);
  } finally {
    await fresh.close();
  }
}

// biome-ignore lint/suspicious/noExplicitAny: rows are of any table
const rowsOf = (archive: readonly string[], table: string): any[] =>
  archive
    .slice(1, -1)
    .map((line) => JSON.parse(line))
    .filter((read) => read.table === table)
    .map((read) => read.row);

const leftOf = async (of: TestApp): Promise<number> => {
  const [left] = await of.admin<{ rows: string }[]>`select (select count(*) from book.storehouse)
    + (select count(*) from book.entry) + (select count(*) from door.login) as rows`;
  return Number(left?.rows);
};

test('every table of the book is in the archive, or stays behind for a reason that is told', async () => {
  const tables = await app.admin<{ name: string }[]>`
    select tablename as name from pg_tables where schemaname = 'book' order by 1`;
  const archived = await administer(app.adminUrl, listBookTables);
  const names = [...archived.map(({ name }) => name), ...Object.keys(LEFT_BEHIND)];
  expect(names.toSorted()).toEqual(tables.map(({ name }) => name).toSorted());
  expect(Object.keys(JSON.parse(lines.at(-1) ?? '').end.tables).toSorted()).toEqual(
    archived.map(({ name }) => name).toSorted(),
  );
});

test('the archive has every row of its storehouse and none of another', async () => {
  const { tables } = JSON.parse(lines.at(-1) ?? '').end;
  for (const [table, count] of Object.entries(tables)) {
    const [row] = await app.admin<{ count: string }[]>`select count(*) from ${app.admin(`book.${table}`)}
      where storehouse_id = ${storehouse.storehouseId}`;
    expect([table, count]).toEqual([table, Number(row?.count)]);
  }
  const others = lines
    .slice(1, -1)
    .filter((line) => JSON.parse(line).row.storehouse_id !== storehouse.storehouseId);
  expect(others).toEqual([]);
  expect(Object.entries(tables).filter(([, count]) => count === 0)).toEqual([]);
});

test('a photo of a loan comes along with its bytes and with what it shows', () => {
  const [photo] = rowsOf(lines, 'photo').filter(({ moment }) => moment === 'out');
  expect(photo).toMatchObject({ loan_id: world.ids.loan, buy_id: null });
  expect(photo.content).toMatch(/xffd8ff/);
});

test('an order of tables puts each after those that it refers to, and refuses a circle', () => {
  const tables = [{ name: 'a' }, { name: 'b' }, { name: 'c' }];
  const chain = [
    { from: 'a', to: 'b' },
    { from: 'b', to: 'c' },
  ];
  expect(orderByReference(tables, chain).map(({ name }) => name)).toEqual(['c', 'b', 'a']);
  expect(() => orderByReference(tables, [...chain, { from: 'c', to: 'a' }])).toThrow(/circle/);
});

test('nothing in it opens a door', async () => {
  const archive = lines.join('\n');
  const secrets = await app.admin<{ secret: string }[]>`
    select password_hash as secret from door.login union all select session_id from door.session
    union all select login_id::text from door.login union all select email from door.login
    union all select token_hash from book.invitation where length(token_hash) = 64
    union all select secret_sha256 from book.calendar_feed`;
  expect(secrets.length).toBeGreaterThan(10);
  expect(secrets.filter(({ secret }) => archive.includes(secret))).toEqual([]);
  expect(rowsOf(lines, 'person').every((person) => person.login_id === null)).toBe(true);
});

test('an import has every row as it was, to the microsecond and the last digit, and its audit holds', () =>
  withEmptyApp(async (fresh) => {
    const { verified, tables } = await importInto(fresh, lines);
    expect(verified.audit.holds).toBe(true);
    expect(tables).toEqual(
      Object.fromEntries(
        Object.entries(JSON.parse(lines.at(-1) ?? '').end.tables).filter(([, count]) => count !== 0),
      ),
    );
    // What it would write itself is the same again, line by line: rows, ids, numbers and hash.
    expect(await archiveOf(fresh, storehouse.storehouseId)).toEqual(lines);
  }));

test('the treasurer finds the books as they were, and the next entry gets the next number', () =>
  withEmptyApp(async (fresh) => {
    const treasurer = { personName: 'Birchall Person', email: 'ben@new.example.org' };
    const { verified } = await importInto(fresh, lines, [COORDINATOR, treasurer]);
    const as = async (email: string) => {
      const password = verified.logins.find((login) => login.email === email)?.password;
      const answer = await fresh.as().post('/api/session', { email, password });
      return fresh.as(answer.headers.getSetCookie()[0]?.split(';')[0]);
    };
    const { path } = storehouse;
    const ben = await as('ben@new.example.org');
    const last = Math.max(...rowsOf(lines, 'entry').map((entry) => entry.entry_no));
    for (const page of [
      '/balances?limit=200',
      '/trial-balance',
      `/buys/${closed.buyId}`,
      '/entries?limit=200',
    ])
      expect([page, (await ben.get(path + page)).body]).toEqual([
        page,
        (await closed.treasurer.get(path + page)).body,
      ]);
    const paid = { householdId: closed.households.Dell.householdId, minorUnits: 100, till: 'bank' };
    expect(bodyOf(await ben.post(`${path}/payments`, paid), 201).entryNo).toBe(last + 1);

    const ada = await as('ada@new.example.org');
    const invitation = await anInvitation({ ...storehouse, coordinator: ada }, { householdName: 'Newcomer' });
    const login = { email: 'new@new.example.org', password: 'a long enough password' };
    bodyOf(await fresh.as().post(invitation, { personName: 'Nell Newcomer', login }), 201);
    expect((await ada.get(`${path}/audit`)).body.holds).toBe(true);
  }));

test('a login that the new server knows is kept with its password', () =>
  withEmptyApp(async (fresh) => {
    const other = await anotherStorehouse(fresh);
    const email = 'bell-lane-storehouse@example.org';
    const { verified } = await importInto(fresh, lines, [{ personName: null, email }]);
    expect(verified.logins).toEqual([{ personName: 'Ada Ashdown', email, password: null }]);
    const { storehouses } = bodyOf(await other.coordinator.get('/api/session'));
    expect(storehouses.map((one: { name: string }) => one.name).toSorted()).toEqual([
      'Alder Row Storehouse',
      'Bell Lane Storehouse',
    ]);
    await expect(importInto(fresh, lines)).rejects.toThrow(/is in this database already/);
  }));

test('an open invitation comes withdrawn, since its link leads to the old server', async () => {
  const [open] = await app.admin<{ id: string }[]>`select invitation_id as id from book.invitation
    where used_at is null and withdrawn_at is null and storehouse_id = ${storehouse.storehouseId}`;
  const told = rowsOf(lines, 'invitation').find((row) => row.invitation_id === open?.id);
  expect(new Date(told.withdrawn_at)).toEqual(app.clock.now);
});

test.for<{ what: string; archive: () => string[]; words: RegExp }>([
  {
    what: 'an amount that was changed without knowing of the hash',
    archive: () => [
      ...changed(lines, 'movement', (row) => ({ ...row, amount: row.amount + 1 })).slice(0, -1),
      lines.at(-1) ?? '',
    ],
    words: /was changed or damaged after it was written/,
  },
  {
    what: 'an amount that was changed with a hash to fit',
    archive: () => changed(lines, 'movement', (row) => ({ ...row, amount: row.amount + 1 })),
    words: /does not add up[\s\S]*account/,
  },
  {
    what: 'a total that was changed with a hash to fit',
    archive: () =>
      changed(
        lines,
        'account',
        (row) => ({ ...row, inflow: row.inflow + 1 }),
        (row) => row.kind === 'household',
      ),
    words: /does not add up/,
  },
  {
    what: 'an entry number that leaves a gap',
    archive: () => changed(lines, 'book_state', (row) => ({ ...row, last_entry_no: row.last_entry_no + 1 })),
    words: /not numbered without a gap/,
  },
  {
    what: 'a movement without its entry',
    archive: () =>
      sealed(lines.filter((line) => line !== lines.find((one) => one.startsWith('{"table":"entry"')))),
    words: /breaks movement_entry_fk/,
  },
  {
    what: 'a row of another storehouse',
    archive: () => changed(lines, 'household', (row) => ({ ...row, storehouse_id: row.household_id })),
    words: /another storehouse's/,
  },
  {
    what: 'a column that is not there',
    archive: () => changed(lines, 'household', (row) => ({ ...row, income: 1 })),
    words: /must have exactly its own columns/,
  },
  {
    what: 'a column that is missing',
    archive: () => changed(lines, 'household', ({ seat: _, ...row }) => row),
    words: /must have exactly its own columns/,
  },
  {
    what: 'a table that is not the book’s',
    archive: () => sealed(lines.with(2, JSON.stringify({ table: 'login', row: { storehouse_id: '1' } }))),
    words: /keeps no table login/,
  },
  {
    what: 'a value that can’t be',
    archive: () => changed(lines, 'household', (row) => ({ ...row, joined_on: '2026-02-30' })),
    words: /can't be read, so nothing of it was taken \(22008\)/,
  },
  { what: 'an archive that was cut off', archive: () => lines.slice(0, -1), words: /ends too early/ },
  {
    what: 'a line that was cut off',
    archive: () => lines.with(5, (lines[5] ?? '').slice(0, 20)),
    words: /line 6 of this archive can't be read/,
  },
  { what: 'something behind the end', archive: () => [...lines, lines[2] ?? ''], words: /behind the end/ },
  { what: 'an empty file', archive: () => [], words: /this file is empty/ },
  {
    what: 'something else altogether',
    archive: () => ['PK\u0003\u0004'],
    words: /no archive of a Sheafbook/,
  },
  { what: 'another format', archive: () => ['{"format":"ledger"}'], words: /no archive of a Sheafbook/ },
  {
    what: 'a later version',
    archive: () => lines.with(0, (lines[0] ?? '').replace('"version":1', '"version":2')),
    words: /has version 2, and this Sheafbook reads version 1/,
  },
  {
    what: 'an archive of another migration',
    archive: () =>
      lines.with(0, (lines[0] ?? '').replace(/"migrationsSha256":"\w{4}/, '"migrationsSha256":"0000')),
    words: /bring both servers to the same version/,
  },
])('$what is refused in words, and leaves nothing', async ({ archive, words }) => {
  await expect(importInto(empty, archive())).rejects.toThrow(words);
  expect(await leftOf(empty)).toBe(0);
});

test('without a login for anybody an import is refused', async () => {
  await expect(importInto(empty, lines, [])).rejects.toThrow(/an archive has no logins[\s\S]*Ada Ashdown/);
  expect(await leftOf(empty)).toBe(0);
});

test.for([
  {
    login: { personName: 'Nobody', email: 'x@example.org' },
    words: /nobody of this storehouse is called Nobody/,
  },
  {
    login: { personName: 'Birchall Person', email: 'b@example.org' },
    words: /without one for a coordinator/,
  },
])('a login for $login.personName alone is refused', async ({ login, words }) => {
  await expect(importInto(empty, lines, [login])).rejects.toThrow(words);
  expect(await leftOf(empty)).toBe(0);
});

test('a storehouse that is not there has no archive', async () => {
  await expect(archiveOf(app, world.ids.household ?? '')).rejects.toThrow(/there is no storehouse/);
});

test('lines are divided by their ends alone, wherever the parts of the file are', async () => {
  const read = async (...parts: string[]) => {
    const found: string[] = [];
    for await (const line of splitLines(Readable.from(parts))) found.push(line);
    return found;
  };
  expect(await read('a\u2028b', 'c\nd', '\n', 'e\r\nf')).toEqual(['a\u2028bc', 'd', 'e\r', 'f']);
  expect(await read('a\n')).toEqual(['a']);
  expect(await read()).toEqual([]);
});
