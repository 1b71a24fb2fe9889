import type { createApp } from '@sheafbook/api';
import type { Sql } from 'postgres';

export type Seeded = {
  readonly storehouseId: string;
  /** Each as a browser would send it: the coordinator's, and that of the treasurer, whose page is read. */
  readonly coordinatorCookie: string;
  readonly treasurerCookie: string;
  readonly treasurerHouseholdId: string;
  readonly householdIds: readonly string[];
};

const HOUSEHOLDS = 14;
const ENTRIES_PER_HOUSEHOLD = 200;
const PASSWORD = 'a long enough password';

/** A storehouse of fourteen households with some years behind it: 200 entries on each household, deposits on two buys. */
export async function seedStorehouse(app: ReturnType<typeof createApp>, admin: Sql): Promise<Seeded> {
  const call = async (path: string, body: unknown, cookie = '') => {
    const headers = { 'Content-Type': 'application/json', cookie };
    const answer = await app.request(path, { method: 'POST', headers, body: JSON.stringify(body) });
    const answered = await answer.json();
    if (answer.status >= 300) throw new Error(`${path} answered ${JSON.stringify(answered)}`);
    const cookies = answer.headers.getSetCookie().map((line) => line.split(';')[0] ?? '');
    return { answered, cookie: cookies[0] ?? cookie };
  };
  const founded = await call('/api/set-up', {
    email: 'coordinator@example.org',
    password: PASSWORD,
    personName: 'Ada Ashdown',
    householdName: 'Ashdown',
    storehouse: { name: 'Alder Row Storehouse', currency: 'USD', timeZone: 'America/Chicago' },
  });
  const { storehouseId } = founded.answered as { storehouseId: string };
  const path = `/api/storehouses/${storehouseId}`;
  const invited = await call(`${path}/invitations`, { householdName: 'Birchall' }, founded.cookie);
  const joined = await call(`/api/invitations/${storehouseId}/${invited.answered.token}`, {
    personName: 'Ben Birchall',
    login: { email: 'treasurer@example.org', password: PASSWORD },
  });
  const { personId, householdId } = joined.answered as { personId: string; householdId: string };
  await call(`${path}/persons/${personId}/duties`, { duty: 'treasurer' }, founded.cookie);
  const householdIds = await fillBook(admin, { storehouseId, personId });
  return {
    storehouseId,
    coordinatorCookie: founded.cookie,
    treasurerCookie: joined.cookie,
    treasurerHouseholdId: householdId,
    householdIds,
  };
}

/** Straight into the tables, as an administrator can, so that the bench is not mostly setting up. */
async function fillBook(admin: Sql, of: { storehouseId: string; personId: string }): Promise<string[]> {
  const { storehouseId, personId } = of;
  const rows = await admin.begin(async (tx) => {
    await tx`select set_config('app.storehouse', ${storehouseId}, true)`;
    await tx`with o as (
        insert into book.owner (storehouse_id, kind) select ${storehouseId}, 'household'
        from generate_series(1, ${HOUSEHOLDS}::int - 2) returning owner_id)
      insert into book.household (storehouse_id, household_id, seat, name, joined_on)
      select ${storehouseId}, owner_id, 100 + row_number() over (), 'Household ' || row_number() over (), '2020-01-01'
      from o`;
    await tx`insert into book.buy (storehouse_id, name, gathering_closes_at, order_on, made_by, made_at)
      select ${storehouseId}, 'Buy ' || n, now(), '2026-01-01', ${personId}, now() from generate_series(1, 2) n`;
    await tx`insert into book.account (storehouse_id, unit_id, unit_kind, kind, owner_id, cause_id, guard)
      select u.storehouse_id, u.unit_id, 'currency', a.kind, a.owner_id, a.cause_id, a.guard from book.unit u,
        lateral (select 'bank' as kind, null::uuid as owner_id, null::uuid as cause_id, 'none' as guard
          union all select 'household', household_id, null, 'none' from book.household
          union all select 'buy_deposit', household_id, buy_id, 'not_above' from book.household, book.buy) a
      where u.kind = 'currency' on conflict do nothing`;
    await tx`select book.post_entry('payment-received', '2025-01-01', now(), ${personId}, null, null, null, null, '',
        array[h.unit_id], array[h.account_id], array[b.account_id], array[1000 + n]) from generate_series(1,
        ${ENTRIES_PER_HOUSEHOLD}::int) n, book.account h, book.account b where h.kind = 'household' and b.kind = 'bank'`;
    await tx`select book.post_entry('deposit-received', '2025-01-02', now(), ${personId}, null, null, null, null, '',
        array[d.unit_id], array[d.account_id], array[b.account_id], array[5000])
      from book.account d, book.account b where d.kind = 'buy_deposit' and b.kind = 'bank'`;
    return tx<{ id: string }[]>`select household_id as id from book.household order by seat`;
  });
  await admin`vacuum analyze`;
  return rows.map(({ id }) => id);
}
