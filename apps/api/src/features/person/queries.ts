import type { Tx } from '@sheafbook/db';
import { dutyGrants, persons } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';

export async function insertPerson(tx: Tx, person: typeof persons.$inferInsert): Promise<string> {
  const [row] = await tx.insert(persons).values(person).returning({ personId: persons.personId });
  assert(row, 'an insert returns its row');
  return row.personId;
}

export async function insertDutyGrant(tx: Tx, grant: typeof dutyGrants.$inferInsert): Promise<void> {
  await tx.insert(dutyGrants).values(grant);
}
