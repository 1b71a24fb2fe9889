import type { Tx } from '@sheafbook/db';
import { type HouseholdContactRow, householdContacts } from '@sheafbook/db/tables';
import { and, eq } from 'drizzle-orm';

const isOf = (storehouseId: string, householdId: string) =>
  and(eq(householdContacts.storehouseId, storehouseId), eq(householdContacts.householdId, householdId));

/** A household that keeps its contact to itself looks, to a neighbour, like one that never entered any. */
export async function findContact(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<HouseholdContactRow | undefined> {
  const [row] = await tx.select().from(householdContacts).where(isOf(storehouseId, householdId));
  return row;
}

/** Undefined when somebody entered the first one meanwhile. */
export async function insertContact(
  tx: Tx,
  contact: typeof householdContacts.$inferInsert,
): Promise<HouseholdContactRow | undefined> {
  const [row] = await tx.insert(householdContacts).values(contact).onConflictDoNothing().returning();
  return row;
}

/** Undefined when the version is no longer the one in the book. */
export async function updateContact(
  tx: Tx,
  { version, ...contact }: typeof householdContacts.$inferInsert & { version: number },
): Promise<HouseholdContactRow | undefined> {
  const { phone, address, email, shownToMembers } = contact;
  const [row] = await tx
    .update(householdContacts)
    .set({ phone, address, email, shownToMembers, version: version + 1 })
    .where(and(isOf(contact.storehouseId, contact.householdId), eq(householdContacts.version, version)))
    .returning();
  return row;
}
