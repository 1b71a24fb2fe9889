import type { Caller, TestApp } from './app.ts';
import { bodyOf } from './buy.ts';
import { aHousehold, type TestHousehold } from './household.ts';
import { aStorehouse, type TestStorehouse } from './storehouse.ts';

/** A storehouse whose money Birchall keeps and Corran reviews; Dell has no duty. Ashdown coordinates. */
export type TestBooks = TestStorehouse & {
  birchall: TestHousehold;
  corran: TestHousehold;
  dell: TestHousehold;
  treasurer: Caller;
  reviewer: Caller;
};

export async function theBooks(app: TestApp): Promise<TestBooks> {
  const storehouse = await aStorehouse(app);
  const birchall = await aHousehold(app, storehouse, 'Birchall', { duties: ['treasurer'] });
  const corran = await aHousehold(app, storehouse, 'Corran', { duties: ['reviewer'] });
  const dell = await aHousehold(app, storehouse, 'Dell');
  const callers = { treasurer: birchall.caller, reviewer: corran.caller };
  return { ...storehouse, birchall, corran, dell, ...callers };
}

/** Brings a household's balance over from an older book: above zero it owes. */
export async function anOpeningBalance(
  books: TestBooks,
  { householdId }: TestHousehold,
  { balanceMinorUnits, onDay }: { balanceMinorUnits: number; onDay?: string },
) {
  const wish = { of: 'household', householdId, balanceMinorUnits, reason: 'from the old book', onDay };
  return bodyOf(await books.treasurer.post(`${books.path}/opening-balances`, wish), 201);
}

/** What a household owes by the running totals, read by its own login. */
export async function balanceOf(books: TestBooks, household: TestHousehold): Promise<number> {
  const path = `${books.path}/households/${household.householdId}/balance`;
  return bodyOf(await household.caller.get(path)).balanceMinorUnits;
}

/** Everything that a money command could have changed. */
async function bookState(app: TestApp): Promise<string> {
  const rows = await app.admin`select
    (select jsonb_agg(a order by a.account_id) from book.account a where a.inflow <> 0 or a.outflow <> 0) as accounts,
    (select jsonb_agg(e order by e.entry_no) from book.entry e) as entries,
    (select jsonb_agg(m order by m.entry_id, m.line) from book.movement m) as movements,
    (select jsonb_agg(s) from book.book_state s) as states,
    (select jsonb_agg(w order by w.write_off_id) from book.write_off w) as write_offs,
    (select jsonb_agg(f order by f.fund_promise_id) from book.fund_promise f) as fund_promises,
    (select count(*) from book.kept_answer) as kept_answers`;
  return JSON.stringify(rows);
}

/** Runs a call that is refused, and tells how, and whether the books are as they were. */
export async function refusalOf(app: TestApp, call: () => Promise<{ status: number; body: unknown }>) {
  const before = await bookState(app);
  const { status, body } = await call();
  const { code, fields = [] } = body as { code?: string; fields?: { field: string }[] };
  const isUnchanged = (await bookState(app)) === before;
  return { status, code, fields: fields.map(({ field }) => field), isUnchanged };
}
