import type { Tx } from '@sheafbook/db';
import type { HouseholdRow, PersonRow } from '@sheafbook/db/tables';
import { given } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { lockBook } from '../../platform/lock-book.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { inSpanish } from '../../platform/spoken/spanish.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { endDutiesOf, listLastOfDuty } from '../duty/use-cases.ts';
import { hasLogin } from '../helper/queries.ts';
import { lockPresentHousehold } from '../household/queries.ts';
import { refuseStale, seatName } from '../household/use-cases.ts';
import { deleteLettersOf } from '../letter/queries.ts';
import { loadPresentPerson } from '../person/queries.ts';
import { deleteTellingsOf } from '../reminder/queries.ts';
import { loadOutsideVessels } from '../storehouse/queries.ts';
import { mayTakeOut, mayTakeOutPerson } from './policy.ts';
import { type Left, presentUnsettled } from './present.ts';
import {
  deleteOwnNotices,
  deleteOwnThings,
  type HoldingRow,
  listHoldings,
  listMoneyLeft,
  listOpenBuys,
  listPresentPersons,
  listPromises,
  type PromiseRow,
  type Subject,
  updateContainerNotesForgotten,
  updateHelpEnded,
  updateHelpersEnded,
  updateHouseholdLeft,
  updateInvitationsWithdrawn,
  updateOffersTakenBack,
  updatePersonsLeft,
  updatePickUpsSigned,
  updateWaiversForgotten,
} from './queries.ts';
import type { Unsettled } from './unsettled.ts';

/** What keeps a household from leaving now; an empty list when nothing does. Changes nothing. */
export function readUnsettled(context: Context, householdId: string): Promise<Unsettled[]> {
  return withTx(context, async (tx) => {
    await lockOwnLeaving(tx, context, householdId);
    await notePrivateRead(tx, context, { householdIds: [householdId], what: 'balance', purpose: 'leaving' });
    return listUnsettled(tx, { storehouseId: context.actor.storehouseId, householdId });
  });
}

/**
 * A household leaves once it is settled: it owes nothing and is owed nothing, no buy binds it, and what it owns is at
 * home. Then its food goes with it, its duties and helpers end, everything private is deleted, and its seat's number
 * replaces its name and its persons' names: money and mass that moved stay under that seat alone (job map 14).
 */
export function leaveHousehold(context: Context, householdId: string, version: number): Promise<Left> {
  return withTx(
    context,
    async (tx) => {
      const household = await lockOwnLeaving(tx, context, householdId);
      refuseStale(household, version);
      return takeOut(tx, context, household);
    },
    { task: 'leaving' },
  );
}

/** A person leaves alone; the last one of a household takes the household with them. */
export function leavePerson(context: Context, personId: string): Promise<Left | null> {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const person = await loadPresentPerson(tx, storehouseId, personId);
      if (!mayTakeOutPerson(context.actor, person)) throw new Problem('not-your-household');
      if (person.householdId === null) return takeOutPerson(tx, context, person, 'No seat');
      const household = await lockPresentHousehold(tx, storehouseId, person.householdId);
      const { householdId } = household;
      const present = await listPresentPersons(tx, { storehouseId, householdId });
      const isLast = present.every((other) => other.personId === personId);
      if (isLast) return takeOut(tx, context, household);
      return takeOutPerson(tx, context, person, seatName(household.seat));
    },
    { task: 'leaving' },
  );
}

/** Alone with the household, then with the book: from here nothing new can bind it. */
async function lockOwnLeaving(tx: Tx, context: Context, householdId: string): Promise<HouseholdRow> {
  const { storehouseId } = context.actor;
  const household = await lockPresentHousehold(tx, storehouseId, householdId);
  const subject = { householdId, hasLogin: await hasLogin(tx, storehouseId, householdId) };
  if (!mayTakeOut(context.actor, subject)) throw new Problem('not-your-household');
  return household;
}

async function takeOut(tx: Tx, context: Context, household: HouseholdRow): Promise<Left> {
  const { storehouseId, householdId } = household;
  const subject = { storehouseId, householdId };
  await lockBook(tx);
  const unsettled = await listUnsettled(tx, subject);
  if (unsettled.length > 0) throw notSettled(context, householdId, unsettled);
  const takenAlong = await listHoldings(tx, subject);
  await postTakenAlong(tx, context, { householdId, takenAlong });
  const leavers = { storehouseId, personIds: await listPersonIds(tx, subject) };
  const [leftOn, name] = [todayOf(context), seatName(household.seat)];
  await endDutiesOf(tx, context, leavers);
  await updateHelpEnded(tx, leavers, context.now());
  await updateHelpersEnded(tx, subject, context.now());
  await deleteLettersOf(tx, leavers);
  await updateInvitationsWithdrawn(tx, subject, context.now());
  await updatePickUpsSigned(tx, subject, name);
  await updateWaiversForgotten(tx, subject);
  await updateOffersTakenBack(tx, subject, context.now());
  await updateContainerNotesForgotten(tx, subject);
  await deleteOwnNotices(tx, subject);
  await deleteOwnThings(tx, subject);
  await deleteTellingsOf(tx, leavers);
  await updatePersonsLeft(tx, leavers, { name, leftOn });
  const left = { name, leftOn, version: household.version + 1 };
  return { household: await updateHouseholdLeft(tx, subject, left), takenAlong };
}

async function takeOutPerson(tx: Tx, context: Context, person: PersonRow, name: string): Promise<null> {
  const leavers = { storehouseId: person.storehouseId, personIds: [person.personId] };
  const [last] = await listLastOfDuty(tx, person.storehouseId, leavers.personIds);
  if (last) throw new Problem('last-of-duty', { duty: last.duty });
  await endDutiesOf(tx, context, leavers);
  await updateHelpEnded(tx, leavers, context.now());
  await deleteLettersOf(tx, leavers);
  await deleteTellingsOf(tx, leavers);
  await updatePersonsLeft(tx, leavers, { name, leftOn: todayOf(context) });
  return null;
}

const listPersonIds = async (tx: Tx, subject: Subject) =>
  (await listPresentPersons(tx, subject)).map((person) => person.personId);

async function listUnsettled(tx: Tx, subject: Subject): Promise<Unsettled[]> {
  const last = await listLastOfDuty(tx, subject.storehouseId, await listPersonIds(tx, subject));
  const money = await listMoneyLeft(tx, subject);
  const openBuys = await listOpenBuys(tx, subject);
  const holdings = await listHoldings(tx, subject);
  const promises = await listPromises(tx, subject);
  return [
    ...money.map(
      ({ kind, minorUnits, buyId, buyName, thing }): Unsettled =>
        kind === 'household'
          ? { what: 'balance', minorUnits }
          : { what: 'deposit', minorUnits, buyId, buyName, thing },
    ),
    ...openBuys.map(
      ({ buy_id: buyId, name: buyName, stage, because }): Unsettled => ({
        what: 'open-buy',
        buyId,
        buyName,
        stage,
        because,
      }),
    ),
    ...holdings.flatMap(stillAtStore),
    ...promises.map(stillPromised),
    ...last.map(({ duty, personId }): Unsettled => ({ what: 'last-of-duty', duty, personId })),
  ];
}

function stillAtStore(row: HoldingRow): Unsettled[] {
  const { vessel_id: bagId, food, food_es: foodEs } = row;
  const bagCode = row.vessel_code ?? '';
  if (row.is_on_hold)
    return [{ what: 'on-hold', vesselId: bagId, code: bagCode, food, foodEs, grams: row.grams }];
  if (row.waiting_grams === 0) return [];
  return [{ what: 'uncollected', bagId, bagCode, food, foodEs, grams: row.waiting_grams }];
}

function stillPromised({ what, id, name, stage }: PromiseRow): Unsettled {
  if (what === 'packing-day') return { what, sessionId: id, sessionName: name, stage };
  return { what, bookingId: id, thing: name };
}

function notSettled(context: Context, householdId: string, unsettled: readonly Unsettled[]): Problem {
  const { currency, householdId: ownId } = context.actor;
  const items = unsettled.map((item) => presentUnsettled(item, { currency, isShown: ownId === householdId }));
  return new Problem('household-not-settled', {
    detail: items.map(({ message }) => message).join(' '),
    detailEs: items.map((item) => ('messageEs' in item ? item.messageEs : inSpanish(item.message))).join(' '),
    unsettled: items,
  });
}

/**
 * What a household owns at home goes with it. The outside has no vessel of its own for that, so the grams move to
 * "given" under the household as owner, in one entry called `taken-along`; sums of gifts leave such entries out.
 */
async function postTakenAlong(
  tx: Tx,
  context: Context,
  { householdId, takenAlong }: { householdId: string; takenAlong: readonly HoldingRow[] },
): Promise<void> {
  if (takenAlong.length === 0) return;
  const vesselIdOf = await loadOutsideVessels(tx, context.actor.storehouseId);
  const drafts = takenAlong.flatMap((row) =>
    given({
      lotId: row.lot_id,
      fromVesselId: row.vessel_id,
      outsideVesselId: vesselIdOf('given'),
      ownerId: householdId,
      amountGrams: row.grams,
    }),
  );
  await postEntry(tx, context, {
    what: 'taken-along',
    onDay: todayOf(context),
    subjectId: householdId,
    drafts,
  });
}
