import type { Tx } from '@sheafbook/db';
import { dutyGrants, type PersonRow, persons } from '@sheafbook/db/tables';
import { and, asc, eq, isNull } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** Those who have not left and whose grant of coordinator is in force, whether or not they can sign in. */
export async function listCoordinators(tx: Tx, storehouseId: string): Promise<PersonRow[]> {
  const rows = await tx
    .select({ person: persons })
    .from(dutyGrants)
    .innerJoin(persons, joinOn(persons, dutyGrants, 'personId'))
    .where(
      and(
        eq(dutyGrants.storehouseId, storehouseId),
        eq(dutyGrants.duty, 'coordinator'),
        isNull(dutyGrants.endedAt),
        isNull(persons.leftOn),
      ),
    )
    .orderBy(asc(persons.name), asc(persons.personId));
  return rows.map(({ person }) => person);
}

/** Those of a name who have not left. */
export function listPersonsNamed(tx: Tx, storehouseId: string, name: string): Promise<PersonRow[]> {
  return tx
    .select()
    .from(persons)
    .where(and(eq(persons.storehouseId, storehouseId), eq(persons.name, name), isNull(persons.leftOn)));
}

export async function updatePersonLogin(
  tx: Tx,
  person: Pick<PersonRow, 'storehouseId' | 'personId'>,
  loginId: string,
): Promise<void> {
  await tx
    .update(persons)
    .set({ loginId })
    .where(and(eq(persons.storehouseId, person.storehouseId), eq(persons.personId, person.personId)));
}
