import type { Tx } from '@sheafbook/db';
import { type HelperGrantRow, helperGrants, households, persons } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, gt, isNotNull, isNull, lt } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** A grant with the names that both sides know it by. */
export type NamedGrant = { grant: HelperGrantRow; helperName: string; householdName: string };

export async function hasLogin(tx: Tx, storehouseId: string, householdId: string): Promise<boolean> {
  const rows = await tx
    .select({ personId: persons.personId })
    .from(persons)
    .where(
      and(
        eq(persons.storehouseId, storehouseId),
        eq(persons.householdId, householdId),
        isNull(persons.leftOn),
        isNotNull(persons.loginId),
      ),
    )
    .limit(1);
  return rows.length > 0;
}

export async function insertHelperGrant(
  tx: Tx,
  grant: typeof helperGrants.$inferInsert,
): Promise<HelperGrantRow> {
  const [row] = await tx.insert(helperGrants).values(grant).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function findGrantInForce(
  tx: Tx,
  grant: { storehouseId: string; householdId: string; personId: string },
  now: Date,
): Promise<HelperGrantRow | undefined> {
  const [row] = await tx
    .select()
    .from(helperGrants)
    .where(
      and(
        eq(helperGrants.storehouseId, grant.storehouseId),
        eq(helperGrants.householdId, grant.householdId),
        eq(helperGrants.personId, grant.personId),
        gt(helperGrants.expiresAt, now),
        isNull(helperGrants.endedAt),
      ),
    );
  return row;
}

export async function lockHelperGrant(
  tx: Tx,
  storehouseId: string,
  helperGrantId: string,
): Promise<HelperGrantRow | undefined> {
  const [row] = await tx
    .select()
    .from(helperGrants)
    .where(and(eq(helperGrants.storehouseId, storehouseId), eq(helperGrants.helperGrantId, helperGrantId)))
    .for('update');
  return row;
}

export async function updateGrantEnded(tx: Tx, grant: HelperGrantRow, endedAt: Date): Promise<void> {
  await tx
    .update(helperGrants)
    .set({ endedAt })
    .where(
      and(
        eq(helperGrants.storehouseId, grant.storehouseId),
        eq(helperGrants.helperGrantId, grant.helperGrantId),
      ),
    );
}

/** One side's grants, past ones too, newest first: those of a household, or those of a helper. */
export function listHelperGrants(
  tx: Tx,
  side: { storehouseId: string; householdId: string } | { storehouseId: string; personId: string },
  page: { after: string | undefined; limit: number },
): Promise<NamedGrant[]> {
  const isTheirs =
    'householdId' in side
      ? eq(helperGrants.householdId, side.householdId)
      : eq(helperGrants.personId, side.personId);
  return tx
    .select({ grant: helperGrants, helperName: persons.name, householdName: households.name })
    .from(helperGrants)
    .innerJoin(persons, joinOn(persons, helperGrants, 'personId'))
    .innerJoin(households, joinOn(households, helperGrants, 'householdId'))
    .where(
      and(
        eq(helperGrants.storehouseId, side.storehouseId),
        isTheirs,
        page.after === undefined ? undefined : lt(helperGrants.helperGrantId, page.after),
      ),
    )
    .orderBy(desc(helperGrants.helperGrantId))
    .limit(page.limit + 1);
}

/** Every right of a helper that holds at this moment, by the household that it is for. */
export function listGrantsInForce(tx: Tx, storehouseId: string, now: Date): Promise<NamedGrant[]> {
  return tx
    .select({ grant: helperGrants, helperName: persons.name, householdName: households.name })
    .from(helperGrants)
    .innerJoin(persons, joinOn(persons, helperGrants, 'personId'))
    .innerJoin(households, joinOn(households, helperGrants, 'householdId'))
    .where(
      and(
        eq(helperGrants.storehouseId, storehouseId),
        gt(helperGrants.expiresAt, now),
        isNull(helperGrants.endedAt),
      ),
    )
    .orderBy(asc(households.name), asc(helperGrants.helperGrantId));
}
