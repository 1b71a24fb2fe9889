import type { Tx } from '@sheafbook/db';
import { dayInZone } from '@sheafbook/units';
import type { Outside } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { insertPerson } from '../person/queries.ts';
import { hasHouseholdNamed, insertHousehold, loadPresentHousehold, takeNumber } from './queries.ts';
import { isSeatName } from './seat-name.ts';

type Joining = { storehouseId: string; timeZone: string; loginId: string | null; personName: string };

/** A new household takes the next seat, which is never used again, and its first person with it. */
export async function joinWithNewHousehold(
  tx: Tx,
  outside: Outside,
  wish: Joining & { householdName: string },
): Promise<{ householdId: string; personId: string }> {
  const { storehouseId, loginId, personName: name, householdName } = wish;
  await refuseTakenName(tx, storehouseId, householdName);
  const joinedOn = dayInZone(outside.now().getTime(), wish.timeZone);
  const householdId = newId(outside);
  const seat = await takeNumber(tx, storehouseId, 'seat');
  await insertHousehold(tx, { storehouseId, householdId, seat, name: householdName, joinedOn });
  const personId = await insertPerson(tx, { storehouseId, loginId, householdId, name, joinedOn });
  return { householdId, personId };
}

/** A further person of a household that is there already. */
export async function joinHousehold(
  tx: Tx,
  outside: Outside,
  wish: Joining & { householdId: string },
): Promise<{ householdId: string; personId: string }> {
  const { storehouseId, loginId, personName: name, householdId } = wish;
  await loadPresentHousehold(tx, storehouseId, householdId);
  const joinedOn = dayInZone(outside.now().getTime(), wish.timeZone);
  const personId = await insertPerson(tx, { storehouseId, loginId, householdId, name, joinedOn });
  return { householdId, personId };
}

/** `field` is where the name stands in the body. Names of the form "Seat 7" are kept for households that have left. */
export async function refuseTakenName(
  tx: Tx,
  storehouseId: string,
  name: string,
  field = 'householdName',
): Promise<void> {
  if (isSeatName(name))
    throw fieldProblem('invalid-input', field, 'A seat’s number is what a household that left is called.');
  if (await hasHouseholdNamed(tx, storehouseId, name))
    throw fieldProblem('already-there', field, `There is a household called ${name} already.`);
}
