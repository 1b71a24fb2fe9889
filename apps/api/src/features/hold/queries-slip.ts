import type { Tx } from '@sheafbook/db';
import { type HoldRow, holdSlipLines, holdSlips } from '@sheafbook/db/tables';
import { sql } from 'drizzle-orm';

type OfHold = Pick<HoldRow, 'storehouseId' | 'holdId'>;

/** What a slip may say of a code, in the order of its lines (job map section 12). */
export const BECAME = ['aside', 'eaten', 'given', 'thrown-away', 'never-had'] as const;
export type Became = (typeof BECAME)[number];

/** A slip that came back: who signed it and when, what became of each code, and when that was keyed in. */
export type SlipBack = {
  readonly householdId: string | null;
  readonly pantryId: string | null;
  readonly signedBy: string;
  readonly writtenOn: string;
  readonly note: string;
  readonly keyedBy: string;
  readonly keyedAt: string;
  readonly became: readonly { readonly code: string; readonly became: Became }[];
};

export async function insertSlip(
  tx: Tx,
  slip: typeof holdSlips.$inferInsert & { holdSlipId: string },
  lines: readonly { readonly vesselId: string; readonly became: Became }[],
): Promise<void> {
  const { storehouseId, holdSlipId } = slip;
  await tx.insert(holdSlips).values(slip);
  if (lines.length > 0)
    await tx.insert(holdSlipLines).values(lines.map((line) => ({ storehouseId, holdSlipId, ...line })));
}

/** The last slip of each household and pantry for a hold, as far as whoever reads may see them. */
export async function listSlips(tx: Tx, { storehouseId, holdId }: OfHold): Promise<SlipBack[]> {
  const rows = await tx.execute<SlipBack>(sql`
    select distinct on (s.household_id, s.pantry_id) s.household_id as "householdId", s.pantry_id as "pantryId",
      s.signed_by as "signedBy", s.written_on::text as "writtenOn", s.note, p.name as "keyedBy", s.keyed_at as "keyedAt",
      coalesce((select jsonb_agg(jsonb_build_object('code', coalesce(b.bag_code, c.container_code), 'became', l.became)
          order by coalesce(b.bag_code, c.container_code))
        from book.hold_slip_line l
        left join book.bag b on b.storehouse_id = l.storehouse_id and b.bag_id = l.vessel_id
        left join book.container c on c.storehouse_id = l.storehouse_id and c.container_id = l.vessel_id
        where l.storehouse_id = s.storehouse_id and l.hold_slip_id = s.hold_slip_id), '[]') as became
    from book.hold_slip s
    join book.person p on p.storehouse_id = s.storehouse_id and p.person_id = s.keyed_by
    where s.storehouse_id = ${storehouseId} and s.hold_id = ${holdId}
    order by s.household_id, s.pantry_id, s.keyed_at desc, s.hold_slip_id desc`);
  return [...rows];
}
