import type { Tx } from '@sheafbook/db';
import { dayInZone } from '@sheafbook/units';
import type { Outside } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { insertPerson } from '../person/queries.ts';
import { insertHousehold, takeNumber } from './queries.ts';

/** A new household takes the next seat, which is never used again, and its first person with it. */
export async function joinWithNewHousehold(
  tx: Tx,
  outside: Outside,
  wish: {
    storehouseId: string;
    timeZone: string;
    loginId: string | null;
    personName: string;
    householdName: string;
  },
): Promise<{ householdId: string; personId: string }> {
  const { storehouseId, loginId, personName } = wish;
  const joinedOn = dayInZone(outside.now().getTime(), wish.timeZone);
  const householdId = newId(outside);
  const seat = await takeNumber(tx, storehouseId, 'seat');
  await insertHousehold(tx, { storehouseId, householdId, seat, name: wish.householdName, joinedOn });
  const personId = await insertPerson(tx, { storehouseId, loginId, householdId, name: personName, joinedOn });
  return { householdId, personId };
}
