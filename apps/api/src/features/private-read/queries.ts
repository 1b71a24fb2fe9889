import type { Tx } from '@sheafbook/db';
import { persons, privateReads } from '@sheafbook/db/tables';
import { and, desc, eq, lt, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { dayOf, isWithin } from '../../platform/storehouse-day.ts';

/** Newest first; `after` is the id that the page before ended with. */
export function listPrivateReads(
  tx: Tx,
  subject: { storehouseId: string; householdId: string },
  page: { after: string | undefined; limit: number },
) {
  return tx
    .select({ read: privateReads, readerName: persons.name })
    .from(privateReads)
    .innerJoin(persons, joinOn(persons, privateReads, 'personId'))
    .where(
      and(
        eq(privateReads.storehouseId, subject.storehouseId),
        eq(privateReads.householdId, subject.householdId),
        page.after === undefined ? undefined : lt(privateReads.privateReadId, page.after),
      ),
    )
    .orderBy(desc(privateReads.privateReadId))
    .limit(page.limit + 1);
}

export type LooksRow = {
  duties: string;
  what: string;
  purpose: string;
  looks: number;
  readers: number;
  households: number;
  first_on: string;
  last_on: string;
};

export type MonthOfLooks = {
  readonly month: string;
  readonly reader: string;
  readonly purpose: string;
  readonly looks: number;
  readonly households: number;
};

/** The same by the month, the reader and what for. A month is one of the storehouse's own. */
export async function sumLooksByMonth(
  tx: Tx,
  storehouseId: string,
  span: { from: string | undefined; to: string | undefined; timeZone: string },
): Promise<MonthOfLooks[]> {
  const day = dayOf(sql`r.read_at`, span.timeZone);
  return tx.execute<MonthOfLooks>(sql`
    select to_char(${day}, 'YYYY-MM') as month, p.name as reader, r.purpose, count(*)::integer as looks,
      count(distinct r.household_id)::integer as households
    from book.private_read r
    join book.person p on p.storehouse_id = r.storehouse_id and p.person_id = r.person_id
    where r.storehouse_id = ${storehouseId} and p.household_id is distinct from r.household_id
      and ${isWithin(day, { fromOn: span.from, toOn: span.to })}
    group by 1, p.person_id, p.name, r.purpose
    order by 1, p.name, p.person_id, r.purpose`);
}

/**
 * Looks into other households' things, by the duties that the reader held at that moment ('' when none, such as a
 * helper) and by purpose. Days are the storehouse's own.
 */
export async function sumLooks(
  tx: Tx,
  storehouseId: string,
  span: { from: string | undefined; to: string | undefined; timeZone: string },
): Promise<LooksRow[]> {
  const day = dayOf(sql`r.read_at`, span.timeZone);
  return tx.execute<LooksRow>(sql`
    select r.duties, r.what, r.purpose, count(*)::integer as looks,
      count(distinct r.person_id)::integer as readers, count(distinct r.household_id)::integer as households,
      min(r.on_day)::text as first_on, max(r.on_day)::text as last_on
    from (
      select r.what, r.purpose, r.person_id, r.household_id, ${day} as on_day,
        coalesce((select string_agg(d.duty, ' ' order by d.duty) from book.duty_grant d
          where d.storehouse_id = r.storehouse_id and d.person_id = r.person_id
            and d.granted_at <= r.read_at and (d.ended_at is null or d.ended_at > r.read_at)), '') as duties
      from book.private_read r
      join book.person p on p.storehouse_id = r.storehouse_id and p.person_id = r.person_id
      where r.storehouse_id = ${storehouseId} and p.household_id is distinct from r.household_id
        and ${isWithin(day, { fromOn: span.from, toOn: span.to })}) r
    group by r.duties, r.what, r.purpose
    order by looks desc, r.duties, r.what, r.purpose`);
}
