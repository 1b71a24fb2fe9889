import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { addressOf } from '../support/mounted-routes.ts';
import { aStorehouse } from '../support/storehouse.ts';
import { aWorld, type TestWorld } from '../support/world.ts';

// No list ends silently: what stands beyond the most rows of a page is reached page by page, at once, and in the CSV.
const MORE = 203;

const idOf = (n: number) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const hex = (n: number) => n.toString(16).padStart(64, '0');
const code = (n: number) =>
  `22${[...String(n).padStart(4, '0')].map((digit) => 'ABCDEFGHJK'[Number(digit)]).join('')}2`;
const named = (n: number) => ({ name: `No. ${n}` });
type Own = (n: number) => Readonly<Record<string, unknown>>;

/** Each kind of row that grows in number, with what one more of it has of its own besides its id. */
const rowsOf = (householdId: string): Record<string, Own> => ({
  invitation: (n) => ({ token_hash: hex(n) }),
  duty_grant: () => ({ ended_at: '2026-10-01T00:00:00Z' }),
  household: (n) => ({ ...named(n), seat: 1000 + n }),
  eater: named,
  helper_grant: () => ({}),
  private_read: () => ({ household_id: householdId }),
  person: (n) => ({ ...named(n), login_id: null }),
  equipment_item: named,
  food: (n) => ({ food_code: `own-${n}`, name_en: `Own ${n}`, is_own: true }),
  container_kind: (n) => ({ kind_code: `kind-${n}`, name_en: `Kind ${n}` }),
  supplier: named,
  buy: named,
  pledge: (n) => ({ household_id: idOf(n) }),
  delivery: (n) => ({ part_no: 1000 + n }),
  bag: (n) => ({ bag_code: code(n), bag_no: 1000 + n }),
  hold: () => ({ scope: 'containers', bag_id: null }),
  photo: (n) => ({ content: `\\xffd8ff${hex(n)}` }),
  invoice: (n) => ({ number: `B-${n}` }),
  claim: () => ({ state: 'refused', settled_on: '2026-09-01' }),
  bank_file: () => ({}),
  bank_line: (n) => ({ fingerprint: hex(n) }),
  cash_count: () => ({}),
  write_off: () => ({}),
  fund_promise: () => ({ entry_id: null }),
  entry: (n) => ({ entry_no: 10_000 + n }),
  packing_session: named,
  notice: () => ({ kind: 'held', audience: 'everyone', duty: null, household_id: null }),
  container: (n) => ({ container_code: code(n) }),
  import: (n) => ({ import_no: 1000 + n }),
  stock_count: () => ({}),
});

let app: TestApp;
let world: TestWorld;
/** The coordinator, the treasurer, a member with a shelf, and one who helps her. */
let callers: Caller[];
/** The addresses that the API's own description gives a limit. */
let lists: string[];
beforeAll(async () => {
  app = await openTestApp();
  const storehouse = await aStorehouse(app);
  world = await aWorld(app, storehouse);
  const { Corran, Dell } = world.buy.households;
  callers = [storehouse.coordinator, world.buy.treasurer, Dell.caller, Corran.caller];
  await app.admin`insert into book.cash_count (storehouse_id, cash_count_id, on_day, expected_minor_units,
      counted_minor_units, pieces, counted_by, counted_at)
    values (${storehouse.storehouseId}, ${idOf(0)}, '2026-09-01', 0, 0, '[]', ${Dell.personId}, now())`;
  for (const [table, own] of Object.entries(rowsOf(Dell.householdId))) await addRows(table, own);
  const { paths } = bodyOf(await app.as().get('/api/openapi.json'));
  lists = Object.keys(paths).filter((path) =>
    paths[path].get?.parameters?.some(({ name }: { name: string }) => name === 'limit'),
  );
});
afterAll(() => app.close());

/** More rows like one that is there. Their keys lead nowhere new, so those of other tables are not asked for. */
async function addRows(table: string, own: Own): Promise<void> {
  const more = Array.from({ length: MORE }, (_, at) => ({ [`${table}_id`]: idOf(at + 1), ...own(at + 1) }));
  await app.admin.begin(async (tx) => {
    const name = tx(`book.${table}`);
    await tx`set local session_replication_role = replica`;
    await tx`insert into ${name} select r.* from (select t from ${name} t order by t limit 1) one,
      jsonb_array_elements(${tx.json(more as never)}) o, lateral jsonb_populate_record(one.t, o) r`;
  });
}

type Page = { readonly next: string | null };
const rowsIn = (page: Page): unknown[] => Object.values(page).find((part) => Array.isArray(part)) ?? [];

/** The list as the first of those sees it who may and who finds more than a page in it. */
async function readWhole(path: string): Promise<{ caller: Caller; whole: Page } | undefined> {
  for (const caller of callers) {
    const { status, body } = await caller.get(`${path}?limit=all`);
    if (status === 200 && rowsIn(body).length >= MORE) return { caller, whole: body };
  }
  return undefined;
}

async function readByPages(caller: Caller, path: string): Promise<unknown[]> {
  const rows: unknown[] = [];
  for (let after: string | null = ''; after !== null; ) {
    const page: Page = bodyOf(
      await caller.get(`${path}?limit=100${after && `&after=${encodeURIComponent(after)}`}`),
    );
    rows.push(...rowsIn(page));
    after = page.next;
  }
  return rows;
}

/** Their spreadsheets have a row for each part of an entry, a bill or an import; the rows made here have no parts. */
const SHEETS_OF_PARTS = new Set(['GET /entries', 'GET /buys/:buy/invoices', 'GET /imports']);

/** The rows of its spreadsheet, or of what is answered where there is none. */
async function countSheet(caller: Caller, path: string): Promise<number> {
  const { body, headers } = await caller.get(`${path}?format=csv`);
  const isSheet = headers.get('Content-Type')?.startsWith('text/csv');
  return isSheet ? parse(body, { columns: true }).length : rowsIn(body).length;
}

test('each list is reached to its end, by pages, at once and as a spreadsheet', async () => {
  expect(lists.length).toBeGreaterThan(30);
  const broken: Record<string, unknown> = {};
  for (const list of lists) {
    const route = `GET ${list.replaceAll(/\{(\w+)\}/g, ':$1').replace('/api/storehouses/:storehouse', '')}`;
    const path = `${world.storehouse.path}${addressOf(route, world.ids).rest}`;
    const found = await readWhole(path);
    if (found === undefined) {
      broken[route] = 'nobody sees more than a page of it';
      continue;
    }
    const { caller, whole } = found;
    const byPages = await readByPages(caller, path);
    const counts = {
      whole: rowsIn(whole).length,
      byPages: new Set(byPages.map((row) => JSON.stringify(row))).size,
      ...(SHEETS_OF_PARTS.has(route) ? {} : { sheet: await countSheet(caller, path) }),
    };
    if (whole.next !== null || new Set(Object.values(counts)).size !== 1) broken[route] = counts;
  }
  expect(broken).toEqual({});
});
