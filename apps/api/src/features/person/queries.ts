import type { Tx } from '@sheafbook/db';
import { dutyGrants, households, type PersonRow, persons } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, inArray, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
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

/** Those who have not left, by name; `after` is the id of the person that the page before ended with. */
export function listPersons(
  tx: Tx,
  storehouseId: string,
  page: { after: string | undefined; limit: number },
) {
  const isFurther =
    page.after === undefined
      ? undefined
      : sql`(${persons.name}, ${persons.personId}) > (select p.name, p.person_id from book.person p
          where p.storehouse_id = ${storehouseId} and p.person_id = ${page.after})`;
  return tx
    .select({ person: persons, householdName: households.name })
    .from(persons)
    .leftJoin(households, joinOn(households, persons, 'householdId'))
    .where(and(eq(persons.storehouseId, storehouseId), isNull(persons.leftOn), isFurther))
    .orderBy(persons.name, persons.personId)
    .limit(page.limit + 1);
}

/** The duties that these persons hold now. */
export function listDutiesHeld(tx: Tx, storehouseId: string, personIds: readonly string[]) {
  return tx
    .select({ personId: dutyGrants.personId, duty: dutyGrants.duty })
    .from(dutyGrants)
    .where(
      and(
        eq(dutyGrants.storehouseId, storehouseId),
        inArray(dutyGrants.personId, [...personIds]),
        isNull(dutyGrants.endedAt),
      ),
    )
    .orderBy(dutyGrants.duty);
}
