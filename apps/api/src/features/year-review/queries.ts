import type { Tx } from '@sheafbook/db';
import { type SQL, sql } from 'drizzle-orm';
import { dayOf, isWithin } from '../../platform/storehouse-day.ts';

type Days = { readonly fromOn: string; readonly throughOn: string; readonly timeZone: string };

const within = (at: SQL, { fromOn, throughOn, timeZone }: Days): SQL =>
  isWithin(dayOf(at, timeZone), { fromOn, toOn: throughOn });

/**
 * A buy as it came out, with what came back and what was billed after the sharing out.
 * Units: grams of its bags, minor units; what was credited is taken off neither.
 */
export type ReviewedBuy = {
  readonly name: string;
  readonly grams: number;
  readonly goodsMinorUnits: number;
  readonly freightMinorUnits: number;
  readonly otherMinorUnits: number;
  readonly creditedMinorUnits: number;
};

/** The buys that were shared out in some days, in that order. A refused bag never was ours. */
export async function listReviewedBuys(tx: Tx, storehouseId: string, days: Days): Promise<ReviewedBuy[]> {
  const late = sql`book.charge_line t where t.storehouse_id = ${storehouseId} and t.buy_id = b.buy_id
    and t.cost_line like 'late:%'`;
  const kindOfLate = sql`case when t.buy_line_id is not null then 'goods' when t.cost_line like 'late:freight%' then 'freight'
    else 'other' end`;
  const billed = (kind: 'goods' | 'freight' | 'other') => sql`(
    select coalesce(sum(l.minor_units), 0) from book.invoice_line l
    join book.invoice i on i.storehouse_id = ${storehouseId} and i.invoice_id = l.invoice_id and i.voided_at is null
    where l.storehouse_id = ${storehouseId} and l.buy_id = b.buy_id and l.kind = ${kind})
    + (select coalesce(sum(t.minor_units), 0) from ${late} and t.minor_units > 0 and ${kindOfLate} = ${kind})`;
  type Sums = Record<'grams' | 'goods' | 'freight' | 'other' | 'credited', string>;
  const rows = await tx.execute<{ name: string } & Sums>(sql`
    select b.name, ${billed('goods')} as goods, ${billed('freight')} as freight, ${billed('other')} as other,
      (select coalesce(sum(g.net_grams), 0) from book.bag g where g.storehouse_id = ${storehouseId}
        and g.buy_id = b.buy_id and g.decision <> 'refused') as grams,
      (select coalesce(sum(c.credited_minor_units), 0) from book.claim c
        where c.storehouse_id = ${storehouseId} and c.buy_id = b.buy_id)
      - (select coalesce(sum(t.minor_units), 0) from ${late} and t.minor_units < 0) as credited
    from book.buy b
    join (select buy_id, max(moved_at) as moved_at from book.stage_move
      where storehouse_id = ${storehouseId} and to_stage = 'shared-out' group by buy_id) s on s.buy_id = b.buy_id
    where b.storehouse_id = ${storehouseId} and b.stage in ('shared-out', 'closed')
      and ${within(sql`s.moved_at`, days)}
    order by s.moved_at, b.name`);
  return rows.map(({ name, grams, goods, freight, other, credited }) => ({
    ...{ name, grams: Number(grams), creditedMinorUnits: Number(credited) },
    ...{ goodsMinorUnits: Number(goods), freightMinorUnits: Number(freight), otherMinorUnits: Number(other) },
  }));
}

export type ReviewedSessions = {
  readonly sessions: number;
  readonly filled: number;
  readonly good: number;
  readonly scrapPieces: number;
};

/**
 * The packing days that were signed, by the day they began. Good at the first pass is what was never held for its seal, or
 * was let go as sound (job map 6: good containers by containers filled). Scrap is the pieces that were settled as such.
 */
export async function loadReviewedSessions(
  tx: Tx,
  storehouseId: string,
  days: Days,
): Promise<ReviewedSessions> {
  const [row] = await tx.execute<{ sessions: string; filled: string; bad: string; scrap: string }>(sql`
    with s as (select packing_session_id from book.packing_session
      where storehouse_id = ${storehouseId} and stage in ('signed', 'settled') and ${within(sql`starts_at`, days)}),
    f as (select container_id from book.packing_pour where storehouse_id = ${storehouseId}
      and undone_entry_id is null and packing_session_id in (select packing_session_id from s))
    select (select count(*) from s) as sessions, (select count(*) from f) as filled,
      (select count(distinct h.container_id) from book.seal_hold h where h.storehouse_id = ${storehouseId}
        and h.disposition is distinct from 'release' and h.container_id in (select container_id from f)) as bad,
      (select coalesce(sum(c.pieces), 0) from book.session_cost c
        join book.session_settlement t on t.storehouse_id = ${storehouseId}
          and t.session_settlement_id = c.session_settlement_id and t.undone_at is null
        where c.storehouse_id = ${storehouseId} and c.kind = 'scrap'
          and t.packing_session_id in (select packing_session_id from s)) as scrap`);
  const [sessions, filled, bad, scrapPieces] = [row?.sessions, row?.filled, row?.bad, row?.scrap].map(Number);
  return {
    ...{ sessions: sessions ?? 0, filled: filled ?? 0 },
    ...{ good: (filled ?? 0) - (bad ?? 0), scrapPieces: scrapPieces ?? 0 },
  };
}

/** Loans that went out in some days, and those of them that came back after their time or were still out past it at the end. */
export async function countReviewedLoans(tx: Tx, storehouseId: string, days: Days) {
  const [row] = await tx.execute<{ loans: string; late: string }>(sql`
    select count(*) as loans,
      count(*) filter (where coalesce(in_at, (${days.throughOn}::date + 1) at time zone ${days.timeZone}) > due_at) as late
    from book.loan where storehouse_id = ${storehouseId} and ${within(sql`out_at`, days)}`);
  return { loans: Number(row?.loans ?? 0), late: Number(row?.late ?? 0) };
}

/** Manifests that were signed out in some days and not called off, and how many of them have their receipt. */
export async function countReceipts(tx: Tx, storehouseId: string, days: Days) {
  const [row] = await tx.execute<{ manifests: string; received: string }>(sql`
    select count(*) as manifests, count(*) filter (where stage = 'received') as received
    from book.gift_manifest
    where storehouse_id = ${storehouseId} and stage <> 'called-off' and ${within(sql`signed_out_at`, days)}`);
  return { manifests: Number(row?.manifests ?? 0), received: Number(row?.received ?? 0) };
}
