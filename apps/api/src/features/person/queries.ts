import type { Tx } from '@sheafbook/db';
import { type PersonRow, persons } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq } from 'drizzle-orm';
import { Problem } from '../../platform/problem.ts';

export async function insertPerson(tx: Tx, person: typeof persons.$inferInsert): Promise<string> {
  const [row] = await tx.insert(persons).values(person).returning({ personId: persons.personId });
  assert(row, 'an insert returns its row');
  return row.personId;
}

/** One who has not left. */
export async function loadPresentPerson(tx: Tx, storehouseId: string, personId: string): Promise<PersonRow> {
  const [row] = await tx
    .select()
    .from(persons)
    .where(and(eq(persons.storehouseId, storehouseId), eq(persons.personId, personId)));
  if (!row || row.leftOn !== null) throw new Problem('thing-not-found', { thing: 'person' });
  return row;
}
