import type { Tx } from '@sheafbook/db';
import { type DutyGrantRow, dutyGrants, persons, storehouses } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, inArray, isNotNull, isNull, lt, lte, sql } from 'drizzle-orm';
import type { Duty } from '../../platform/actor.ts';
import { joinOn } from '../../platform/join-on.ts';
import type { Holder } from './policy.ts';

/** One change of duties at a time, since their guards read all of them. Inserts that refer to the row may go on. */
export async function lockDuties(tx: Tx, storehouseId: string): Promise<void> {
  await tx
    .select({ storehouseId: storehouses.storehouseId })
    .from(storehouses)
    .where(eq(storehouses.storehouseId, storehouseId))
    .for('no key update');
}

/** Everyone who holds a duty now and can sign in to use it. */
export async function listHolders(tx: Tx, storehouseId: string): Promise<Holder[]> {
  const rows = await tx
    .select({ personId: persons.personId, householdId: persons.householdId, duty: dutyGrants.duty })
    .from(dutyGrants)
    .innerJoin(persons, joinOn(persons, dutyGrants, 'personId'))
    .where(
      and(
        eq(dutyGrants.storehouseId, storehouseId),
        isNull(dutyGrants.endedAt),
        isNull(persons.leftOn),
        isNotNull(persons.loginId),
      ),
    );
  return rows.map((row) => ({ ...row, duty: row.duty as Duty }));
}

/** Who has which duty at this moment and since when, the longest first, and whether they can sign in to use it. */
export function listSitting(tx: Tx, storehouseId: string) {
  return tx
    .select({
      duty: dutyGrants.duty,
      personId: persons.personId,
      name: persons.name,
      grantedAt: dutyGrants.grantedAt,
      canSignIn: sql<boolean>`${persons.loginId} is not null`,
      endsOn: dutyGrants.endsOn,
    })
    .from(dutyGrants)
    .innerJoin(persons, joinOn(persons, dutyGrants, 'personId'))
    .where(and(eq(dutyGrants.storehouseId, storehouseId), isNull(dutyGrants.endedAt), isNull(persons.leftOn)))
    .orderBy(asc(dutyGrants.grantedAt), asc(dutyGrants.dutyGrantId));
}

export async function insertDutyGrant(tx: Tx, grant: typeof dutyGrants.$inferInsert): Promise<DutyGrantRow> {
  const [row] = await tx.insert(dutyGrants).values(grant).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function updateDutyEnded(
  tx: Tx,
  held: { storehouseId: string; personId: string; duty: Duty },
  endedAt: Date,
): Promise<DutyGrantRow | undefined> {
  const [row] = await tx
    .update(dutyGrants)
    .set({ endedAt })
    .where(
      and(
        eq(dutyGrants.storehouseId, held.storehouseId),
        eq(dutyGrants.personId, held.personId),
        eq(dutyGrants.duty, held.duty),
        isNull(dutyGrants.endedAt),
      ),
    )
    .returning();
  return row;
}

export async function updatePlannedEnd(
  tx: Tx,
  held: { storehouseId: string; personId: string; duty: Duty },
  endsOn: string | null,
): Promise<DutyGrantRow | undefined> {
  const [row] = await tx
    .update(dutyGrants)
    .set({ endsOn })
    .where(
      and(
        eq(dutyGrants.storehouseId, held.storehouseId),
        eq(dutyGrants.personId, held.personId),
        eq(dutyGrants.duty, held.duty),
        isNull(dutyGrants.endedAt),
      ),
    )
    .returning();
  return row;
}

export function updateDutiesEnded(
  tx: Tx,
  leavers: { storehouseId: string; personIds: readonly string[] },
  endedAt: Date,
): Promise<DutyGrantRow[]> {
  return tx
    .update(dutyGrants)
    .set({ endedAt })
    .where(
      and(
        eq(dutyGrants.storehouseId, leavers.storehouseId),
        inArray(dutyGrants.personId, [...leavers.personIds]),
        isNull(dutyGrants.endedAt),
      ),
    )
    .returning();
}

/** Who held which duty and when, newest first; `after` is the id that the page before ended with. */
export async function listDutyGrants(
  tx: Tx,
  storehouseId: string,
  page: { after: string | undefined; limit: number },
) {
  const isOlder = page.after === undefined ? undefined : lt(dutyGrants.dutyGrantId, page.after);
  return tx
    .select({ grant: dutyGrants, personName: persons.name })
    .from(dutyGrants)
    .innerJoin(persons, joinOn(persons, dutyGrants, 'personId'))
    .where(and(eq(dutyGrants.storehouseId, storehouseId), isOlder))
    .orderBy(desc(dutyGrants.dutyGrantId))
    .limit(page.limit + 1);
}

/** Whoever got a duty by a moment and when they laid it down, once for each time, also those who left since. */
export function listHoldersUntil(tx: Tx, storehouseId: string, held: { duty: Duty; until: Date }) {
  return tx
    .select({
      personId: persons.personId,
      householdId: persons.householdId,
      endedAt: dutyGrants.endedAt,
    })
    .from(dutyGrants)
    .innerJoin(persons, joinOn(persons, dutyGrants, 'personId'))
    .where(
      and(
        eq(dutyGrants.storehouseId, storehouseId),
        eq(dutyGrants.duty, held.duty),
        lte(dutyGrants.grantedAt, held.until),
      ),
    );
}
