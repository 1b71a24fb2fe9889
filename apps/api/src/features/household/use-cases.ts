import type { Tx } from '@sheafbook/db';
import type { HouseholdRow } from '@sheafbook/db/tables';
import { dayInZone } from '@sheafbook/units';
import type { Context, Outside } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { insertPerson } from '../person/queries.ts';
import { isTheirs, mayRenameThis } from './policy.ts';
import { presentHousehold } from './present.ts';
import {
  hasHouseholdNamed,
  insertHousehold,
  listHouseholds,
  loadHousehold,
  loadPresentHousehold,
  lockPresentHousehold,
  takeNumber,
  updateName,
} from './queries.ts';
import type { HouseholdEdit, PaperHousehold } from './schema.ts';
import { isSeatName, seatName } from './seat-name.ts';

export { isSeatName, seatName };

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

export function readHouseholds(context: Context, page: { after: number | undefined; limit: number }) {
  return withTx(context, (tx) => listHouseholds(tx, context.actor.storehouseId, page));
}

export function readHousehold(context: Context, householdId: string) {
  return withTx(context, (tx) => loadHousehold(tx, context.actor.storehouseId, householdId));
}

/** Enters a household whose person has no login and writes on paper; a helper's grant lets somebody act for it. */
export function foundPaperHousehold(context: Context, wish: PaperHousehold) {
  const { storehouseId, timeZone } = context.actor;
  return withTx(context, async (tx) => {
    const { householdId, personId } = await joinWithNewHousehold(tx, context, {
      storehouseId,
      timeZone,
      loginId: null,
      personName: wish.personName,
      householdName: wish.name,
    });
    return { household: await loadHousehold(tx, storehouseId, householdId), personId };
  });
}

export function renameHousehold(context: Context, householdId: string, edit: HouseholdEdit) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const household = await lockPresentHousehold(tx, storehouseId, householdId);
    if (!mayRenameThis(context.actor, householdId)) throw new Problem('not-your-household');
    refuseStale(household, edit.version);
    if (household.name !== edit.name) await refuseTakenName(tx, storehouseId, edit.name, 'name');
    return updateName(tx, household, edit.name);
  });
}

/** An edit names the version that was read; another one is refused with the newer state. */
export function refuseStale(household: HouseholdRow, version: number): void {
  if (household.version !== version)
    throw new Problem('stale-version', { newer: presentHousehold(household) });
}

/** The household of the path, when the actor acts for it and it has not left. */
export async function loadOwnHousehold(tx: Tx, context: Context, householdId: string): Promise<HouseholdRow> {
  const household = await loadPresentHousehold(tx, context.actor.storehouseId, householdId);
  if (!isTheirs(context.actor, householdId)) throw new Problem('not-your-household');
  return household;
}
