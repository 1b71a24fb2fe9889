import type { Tx } from '@sheafbook/db';
import { type SQL, sql } from 'drizzle-orm';
import { Problem } from '../../platform/problem.ts';

/** How a claim stands: what a supplier never answered and was given up is told from what it refused. */
export type ClaimOutcome = 'open' | 'credited' | 'refused' | 'written-off';

export type ClaimInWords = {
  readonly claimId: string;
  readonly buyId: string;
  readonly buy: string;
  readonly supplierId: string;
  readonly supplier: string;
  readonly foodEn: string | null;
  readonly foodEs: string | null;
  readonly kind: string;
  readonly because: string;
  readonly outcome: ClaimOutcome;
  readonly raisedOn: string;
  readonly settledOn: string | null;
  readonly minorUnits: number;
  readonly creditedMinorUnits: number;
  readonly accountId: string | null;
};

export async function loadClaimInWords(tx: Tx, storehouseId: string, claimId: string): Promise<ClaimInWords> {
  const [claim] = await selectClaims(tx, storehouseId, sql`c.claim_id = ${claimId}`);
  if (!claim) throw new Problem('thing-not-found', { thing: 'claim' });
  return claim;
}

/** Those that have had their answer, the latest raised first. */
export async function listAnsweredClaims(
  tx: Tx,
  storehouseId: string,
  { after, limit }: { after?: string | undefined; limit: number },
): Promise<ClaimInWords[]> {
  const beyond = after === undefined ? sql`true` : sql`c.claim_id < ${after}`;
  return selectClaims(
    tx,
    storehouseId,
    sql`c.state <> 'open' and ${beyond} order by c.claim_id desc limit ${limit}`,
  );
}

/** Those that wait for their answer, the longest first. */
export const listOpenClaims = (tx: Tx, storehouseId: string): Promise<ClaimInWords[]> =>
  selectClaims(tx, storehouseId, sql`c.state = 'open' order by c.raised_on, c.claim_id`);

async function selectClaims(tx: Tx, storehouseId: string, which: SQL): Promise<ClaimInWords[]> {
  const rows = await tx.execute<
    Omit<ClaimInWords, 'minorUnits' | 'creditedMinorUnits'> & { claimed: string; credited: string }
  >(sql`
    select c.claim_id as "claimId", c.buy_id as "buyId", b.name as buy, c.supplier_id as "supplierId",
      s.name as supplier, f.name_en as "foodEn", f.name_es as "foodEs", c.kind, c.because,
      case when exists (select from book.entry e where e.storehouse_id = ${storehouseId}
        and e.subject_id = c.claim_id and e.what = 'claim-written-off') then 'written-off' else c.state end as outcome,
      c.raised_on as "raisedOn", c.settled_on as "settledOn", c.minor_units as claimed,
      c.credited_minor_units as credited, a.account_id as "accountId"
    from book.claim c
    join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = c.buy_id
    join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = c.supplier_id
    left join book.buy_line l on l.storehouse_id = ${storehouseId} and l.buy_line_id = c.buy_line_id
    left join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
    left join book.account a on a.storehouse_id = ${storehouseId} and a.kind = 'supplier_claim'
      and a.cause_id = c.claim_id
    where c.storehouse_id = ${storehouseId} and ${which}`);
  return rows.map(({ claimed, credited, ...row }) => ({
    ...row,
    minorUnits: Number(claimed),
    creditedMinorUnits: Number(credited),
  }));
}

/** Something that happened to a claim: an entry of the book, or a letter that was printed after one. */
export type ClaimStep = {
  readonly what: string;
  readonly onDay: string;
  readonly by: string;
  readonly note: string;
  readonly entryId: string | null;
  readonly entryNo: number | null;
};

export async function listClaimSteps(tx: Tx, storehouseId: string, claimId: string): Promise<ClaimStep[]> {
  const rows = await tx.execute<Omit<ClaimStep, 'entryNo'> & { entryNo: string | null }>(sql`
    select e.what, e.on_day as "onDay", p.name as by, e.note, e.entry_id as "entryId", e.entry_no as "entryNo",
      e.entry_no as at
    from book.entry e
    join book.person p on p.storehouse_id = ${storehouseId} and p.person_id = e.person_id
    where e.storehouse_id = ${storehouseId} and e.subject_id = ${claimId}
    union all
    select l.kind, l.printed_on, p.name, '', null, null, l.as_of_entry_no
    from book.paper l
    join book.person p on p.storehouse_id = ${storehouseId} and p.person_id = l.printed_by
    where l.storehouse_id = ${storehouseId} and l.kind = 'claim-letter' and l.subject_id = ${claimId}
    order by at, "entryNo"`);
  return rows.map(({ what, onDay, by, note, entryId, entryNo }) => ({
    ...{ what, onDay, by, note, entryId },
    entryNo: entryNo === null ? null : Number(entryNo),
  }));
}
