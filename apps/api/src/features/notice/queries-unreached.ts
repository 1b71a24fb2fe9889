import type { Tx } from '@sheafbook/db';
import { dutyGrants, households, notices, persons, pledges } from '@sheafbook/db/tables';
import { and, asc, eq, isNull, lte, type SQL, sql } from 'drizzle-orm';
import type { Actor } from '../../platform/actor.ts';
import { dayOf } from '../../platform/storehouse-day.ts';

/**
 * The households that a notice about safety was for at `writtenBefore` or earlier, and where nobody has acknowledged it,
 * in the order of notices and seats. What was released since is out of danger. Needs the task `notice`.
 */
export async function listUnreached(
  tx: Tx,
  { storehouseId, timeZone }: Pick<Actor, 'storehouseId' | 'timeZone'>,
  writtenBefore: Date,
) {
  return tx
    .select({ notice: notices, householdId: households.householdId, name: households.name })
    .from(notices)
    .innerJoin(
      households,
      and(eq(households.storehouseId, notices.storehouseId), isNull(households.leftOn), isForHousehold),
    )
    .where(
      and(
        eq(notices.storehouseId, storehouseId),
        notices.isSafety,
        isNull(notices.withdrawnAt),
        lte(notices.writtenAt, writtenBefore),
        sql`${households.joinedOn} <= ${dayOf(sql`${notices.writtenAt}`, timeZone)}`,
        sql`not exists (select from book.notice_acknowledged known where known.storehouse_id = ${notices.storehouseId}
          and known.notice_id = ${notices.noticeId} and known.household_id = ${households.householdId})`,
        isNotOfWriter,
        isNotReleased,
      ),
    )
    .orderBy(asc(notices.noticeId), asc(households.seat));
}

const isForHousehold: SQL = sql`case ${notices.audience}
  when 'household' then ${notices.householdId} = ${households.householdId}
  when 'buy' then exists (select from ${pledges} where ${pledges.storehouseId} = ${notices.storehouseId}
    and ${pledges.buyId} = ${notices.buyId} and ${pledges.householdId} = ${households.householdId})
  when 'duty' then exists (select from ${dutyGrants} join ${persons}
    on ${persons.storehouseId} = ${dutyGrants.storehouseId} and ${persons.personId} = ${dutyGrants.personId}
    where ${dutyGrants.storehouseId} = ${notices.storehouseId} and ${dutyGrants.duty} = ${notices.duty}
    and ${dutyGrants.endedAt} is null and ${persons.householdId} = ${households.householdId})
  else true end`;

/** Whoever wrote it down knows it. */
const isNotOfWriter: SQL = sql`not exists (select from ${persons} where ${persons.storehouseId} = ${notices.storehouseId}
  and ${persons.personId} = ${notices.writtenBy} and ${persons.householdId} = ${households.householdId})`;

const isNotReleased: SQL = sql`not exists (select from book.notice released
  where released.storehouse_id = ${notices.storehouseId} and released.kind = 'released'
  and released.path = ${notices.path} and released.household_id = ${notices.householdId})`;
