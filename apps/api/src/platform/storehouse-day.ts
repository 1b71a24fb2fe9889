import { type SQL, sql } from 'drizzle-orm';

/** The storehouse's own day of a moment. */
export const dayOf = (at: SQL, timeZone: string): SQL => sql`(${at} at time zone ${timeZone})::date`;

/** Days from one through another; an end that is not said is open. */
export type DaySpan = { readonly fromOn: string | undefined; readonly toOn: string | undefined };

export const isWithin = (day: SQL, { fromOn, toOn }: DaySpan): SQL =>
  sql`(${fromOn ?? null}::date is null or ${day} >= ${fromOn ?? null}::date)
    and (${toOn ?? null}::date is null or ${day} <= ${toOn ?? null}::date)`;
