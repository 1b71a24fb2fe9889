import type { Tx } from '@sheafbook/db';
import { households, type InvitationRow, invitations, persons, storehouses } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq, lt } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

const isThis = (storehouseId: string, invitationId: string) =>
  and(eq(invitations.storehouseId, storehouseId), eq(invitations.invitationId, invitationId));

const withToken = (storehouseId: string, tokenHash: string) =>
  and(eq(invitations.storehouseId, storehouseId), eq(invitations.tokenHash, tokenHash));

export async function insertInvitation(
  tx: Tx,
  invitation: typeof invitations.$inferInsert,
): Promise<InvitationRow> {
  const [row] = await tx.insert(invitations).values(invitation).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** Newest first; `after` is the id that the page before ended with. */
export async function listInvitations(
  tx: Tx,
  storehouseId: string,
  page: { after: string | undefined; limit: number },
) {
  const isOlder = page.after === undefined ? undefined : lt(invitations.invitationId, page.after);
  return tx
    .select({ invitation: invitations, household: households, maker: persons.name })
    .from(invitations)
    .innerJoin(persons, joinOn(persons, invitations, 'personId', 'madeBy'))
    .leftJoin(households, joinOn(households, invitations, 'householdId'))
    .where(and(eq(invitations.storehouseId, storehouseId), isOlder))
    .orderBy(desc(invitations.invitationId))
    .limit(page.limit + 1);
}

export async function lockInvitation(
  tx: Tx,
  storehouseId: string,
  invitationId: string,
): Promise<InvitationRow | undefined> {
  const [row] = await tx.select().from(invitations).where(isThis(storehouseId, invitationId)).for('update');
  return row;
}

/** What the bearer of a token may know before joining: two names. */
export async function findInvitation(tx: Tx, storehouseId: string, tokenHash: string) {
  const [row] = await tx
    .select({ invitation: invitations, storehouseName: storehouses.name, household: households })
    .from(invitations)
    .innerJoin(storehouses, eq(storehouses.storehouseId, invitations.storehouseId))
    .leftJoin(households, joinOn(households, invitations, 'householdId'))
    .where(withToken(storehouseId, tokenHash));
  return row;
}

/** Two who use one link at once wait here for each other, and the second finds it used. */
export async function lockInvitationWithToken(
  tx: Tx,
  storehouseId: string,
  tokenHash: string,
): Promise<InvitationRow | undefined> {
  const [row] = await tx.select().from(invitations).where(withToken(storehouseId, tokenHash)).for('update');
  return row;
}

export async function updateWithdrawn(tx: Tx, row: InvitationRow, at: Date): Promise<void> {
  await tx.update(invitations).set({ withdrawnAt: at }).where(isThis(row.storehouseId, row.invitationId));
}

/** Names the household it led to, and forgets the suggested name: a household that leaves takes its name along. */
export async function updateUsed(
  tx: Tx,
  row: InvitationRow,
  use: { at: Date; householdId: string },
): Promise<void> {
  await tx
    .update(invitations)
    .set({ usedAt: use.at, householdId: use.householdId, householdName: null })
    .where(isThis(row.storehouseId, row.invitationId));
}
