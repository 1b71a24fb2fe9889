import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import { chanceOfAtLeast, expectedComing, morePeopleToAsk, type ShowRecord } from '@sheafbook/packing';
import { fractionToNumber } from '@sheafbook/units';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { pageOf } from '../../platform/paging.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { freeEquipmentOfSession, moveEquipmentOfSession } from '../booking/use-cases.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { listScalesOfDay } from '../scale-check/use-cases.ts';
import { judgeWishes, warningsOf } from './fit.ts';
import { planDay } from './plan-day.ts';
import { presentSession } from './present-session.ts';
import {
  deleteWishes,
  findSessionByName,
  insertSession,
  insertWishes,
  listHouseholdsHere,
  listOwnMoistures,
  listSessions,
  listSlots,
  listWishes,
  loadSession,
  lockSession,
  sumOwnGrams,
  updateSession,
} from './queries.ts';
import { listHands, listLastStations, listShows, putHand, updateHand } from './queries-hands.ts';
import type { Attendance, HandWish, SessionEdit, SessionQuery, SessionWish, WishList } from './schema.ts';
import { refuseSlotsOutside } from './slots.ts';
import { requireSessionStage } from './stage.ts';
import { moveSlots } from './use-cases-slots.ts';

export { mixWishes } from './mixing.ts';
export { mayJoinSessions } from './policy.ts';
export { requireSessionStage } from './stage.ts';
export { keepStood } from './use-cases-stood.ts';

export function findSessions(context: Context, query: SessionQuery) {
  return withTx(
    context,
    async (tx) =>
      pageOf(
        await listSessions(tx, context.actor.storehouseId, query),
        query.limit,
        ({ packingSessionId }) => packingSessionId,
      ),
    { isReadOnly: true },
  );
}

/** A session as the actor may see it: its facts, its own wishes and slot, who holds the lines, and who comes. */
export function readSession(context: Context, sessionId: string) {
  const { storehouseId, householdId, personId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const session = await loadSession(tx, storehouseId, sessionId);
      const wishes =
        householdId === null ? [] : await withWarnings(tx, storehouseId, { sessionId, householdId });
      const { slots, freed } = await listSlots(tx, storehouseId, sessionId);
      const hands = await listHands(tx, storehouseId, sessionId);
      const ownGrams =
        householdId === null ? new Map<string, number>() : await sumOwnGrams(tx, storehouseId, householdId);
      return {
        session,
        wishes,
        slots,
        freed,
        hands,
        ownGrams,
        householdId,
        personId,
      };
    },
    { isReadOnly: true },
  );
}
export type SessionReading = Awaited<ReturnType<typeof readSession>>;

/** Opens a session for wishes, slots and hands, and tells everyone. */
export function openSession(context: Context, wish: SessionWish): Promise<PackingSessionRow> {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    refuseImpossibleTimes(wish);
    if (new Date(wish.startsAt) <= context.now())
      throw fieldProblem('invalid-input', 'startsAt', 'A session is opened before it starts.');
    await refuseTakenName(tx, storehouseId, wish.name);
    const session = await insertSession(tx, {
      ...{ storehouseId, packingSessionId: newId(context), createdBy: personId, createdAt: context.now() },
      ...factsOf(wish),
    });
    await tellEveryone(
      tx,
      context,
      session,
      `${session.name} is open. Say what you want packed and book a time.`,
    );
    return session;
  });
}

const factsOf = ({ startsAt, endsAt, ...facts }: SessionWish) => ({
  ...facts,
  startsAt: new Date(startsAt),
  endsAt: new Date(endsAt),
});

function refuseImpossibleTimes({ startsAt, endsAt }: Pick<SessionWish, 'startsAt' | 'endsAt'>): void {
  const milliseconds = Date.parse(endsAt) - Date.parse(startsAt);
  if (milliseconds <= 0) throw fieldProblem('invalid-input', 'endsAt', 'A session ends after it starts.');
  if (milliseconds > 24 * 3_600_000)
    throw fieldProblem('invalid-input', 'endsAt', 'A session lasts a day at most. Open one for each day.');
}

async function refuseTakenName(tx: Tx, storehouseId: string, name: string): Promise<void> {
  if (await findSessionByName(tx, storehouseId, name))
    throw fieldProblem('already-there', 'name', `There is a session called ${name} already.`);
}

/** Changes a session that has not begun. Its slots move along; who has one that no longer fits must be moved first. */
export function editSession(
  context: Context,
  sessionId: string,
  edit: SessionEdit,
): Promise<PackingSessionRow> {
  const { storehouseId } = context.actor;
  const { version, ...wish } = edit;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'open');
    if (session.version !== version) throw new Problem('stale-version', { newer: presentSession(session) });
    refuseImpossibleTimes(wish);
    if (session.name !== wish.name) await refuseTakenName(tx, storehouseId, wish.name);
    const facts = factsOf(wish);
    if (facts.startsAt.getTime() !== session.startsAt.getTime() && facts.startsAt <= context.now())
      throw fieldProblem('invalid-input', 'startsAt', 'A session is opened before it starts.');
    await refuseSlotsOutside(tx, session, facts);
    const edited = await updateSession(tx, session, facts);
    const isMoved =
      session.startsAt.getTime() !== edited.startsAt.getTime() || session.place !== edited.place;
    if (isMoved)
      await tellEveryone(
        tx,
        context,
        edited,
        `${edited.name} has another time or place now. Look at it again.`,
      );
    await moveSlots(tx, context, { before: session, after: edited });
    if (isMoved || session.endsAt.getTime() !== edited.endsAt.getTime())
      await moveEquipment(tx, context, edited);
    return edited;
  });
}

export function callOffSession(
  context: Context,
  sessionId: string,
  because: string,
): Promise<PackingSessionRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'open');
    const ended = await updateSession(tx, session, { stage: 'called-off', endedBecause: because });
    await freeEquipmentOfSession(tx, context, sessionId);
    await tellEveryone(tx, context, ended, `${ended.name} is called off: ${because}`);
    return ended;
  });
}

/** The day's things go along with it; what is not free then is told to whoever leads packing. */
async function moveEquipment(tx: Tx, context: Context, session: PackingSessionRow): Promise<void> {
  const { packingSessionId: sessionId, name, startsAt, endsAt } = session;
  const day = { sessionId, name, startMs: startsAt.getTime(), endMs: endsAt.getTime() };
  for (const thing of await moveEquipmentOfSession(tx, context, day))
    await writeNotice(tx, context, {
      ...{ kind: 'packing', audience: { to: 'duty', duty: 'packing_lead' }, about: name },
      says: `${name} has no ${thing} at its new time. Look for another day or another thing.`,
      path: `/packing-sessions/${sessionId}`,
    });
}

async function tellEveryone(
  tx: Tx,
  context: Context,
  session: PackingSessionRow,
  says: string,
): Promise<void> {
  await writeNotice(tx, context, {
    ...{ kind: 'packing', audience: { to: 'everyone' }, about: session.name, says },
    path: `/packing-sessions/${session.packingSessionId}`,
  });
}

/**
 * Puts what a household wants packed in place of what it wanted before. More of a food than it owns in bags is refused, and so
 * is a container that the mass does not fit in.
 */
export function changeWishes(context: Context, sessionId: string, { wishes }: WishList) {
  const { storehouseId, personId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'open');
    await refuseMoreThanOwned(tx, storehouseId, { householdId, wishes });
    await judgeWishes(tx, storehouseId, { householdId, wishes });
    await deleteWishes(tx, storehouseId, { sessionId, householdId });
    await insertWishes(
      tx,
      wishes.map((wish, position) => ({
        ...{ storehouseId, packingWishId: newId(context), packingSessionId: sessionId, householdId },
        ...{ ...wish, position, enteredBy: personId },
      })),
    );
    return withWarnings(tx, storehouseId, { sessionId, householdId });
  });
}

/** A household's wishes, each with what is worth a word on how it is to be packed. */
async function withWarnings(tx: Tx, storehouseId: string, own: { sessionId: string; householdId: string }) {
  const wishes = await listWishes(tx, storehouseId, own);
  const moistures = await listOwnMoistures(tx, storehouseId, own.householdId);
  return wishes.map((row) => ({ ...row, warnings: warningsOf(row, moistures) }));
}

async function refuseMoreThanOwned(
  tx: Tx,
  storehouseId: string,
  { householdId, wishes }: { householdId: string } & WishList,
): Promise<void> {
  const owned = await sumOwnGrams(tx, storehouseId, householdId);
  const asked = new Map<string, number>();
  for (const [at, { foodId, containers, gramsEach }] of wishes.entries()) {
    const sum = (asked.get(foodId) ?? 0) + containers * gramsEach;
    asked.set(foodId, sum);
    const grams = owned.get(foodId) ?? 0;
    if (sum > grams)
      throw fieldProblem(
        'not-enough-left',
        `wishes.${at}.containers`,
        `You own ${grams} g of it in bags; ${sum} g are asked for.`,
      );
  }
}

/** Says whether one comes to help; nobody else may say it for a person. */
export function changeHand(context: Context, sessionId: string, wish: HandWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'open');
    const { isComing, ...skills } = wish;
    if (skills.isUnder16 && skills.maySeam)
      throw fieldProblem(
        'too-young-for-machine',
        'maySeam',
        'Nobody under 16 works the seamer or the sealing bar.',
      );
    await putHand(tx, {
      ...{ storehouseId, packingSessionId: sessionId, personId, saidAt: context.now(), ...skills },
      state: isComing ? 'coming' : 'taken-back',
    });
    return listHands(tx, storehouseId, sessionId);
  });
}

/** The lead ticks who came; only the sum of a person's record is ever reckoned with. */
export function tickHand(context: Context, sessionId: string, wish: { personId: string } & Attendance) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'open', 'running');
    const hands = await listHands(tx, storehouseId, sessionId);
    const found = hands.find(({ hand }) => hand.personId === wish.personId && hand.state !== 'taken-back');
    if (!found) throw new Problem('thing-not-found', { thing: 'helper' });
    await updateHand(tx, found.hand, wish.state);
    return listHands(tx, storehouseId, sessionId);
  });
}

/**
 * The whole day as it stands: what runs on which line when, who is likely to come, and what a person more would buy. The
 * allergies of eaters keep foods apart; each household that was read for it finds that written down.
 */
export function readPlan(context: Context, sessionId: string, people?: number | undefined) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const session = await loadSession(tx, storehouseId, sessionId);
      const day = await planDay(tx, context, session, { purpose: 'plan of a packing session', people });
      const here = await listHouseholdsHere(tx, storehouseId, sessionId);
      return {
        session,
        ...day,
        here,
        scales: await listScalesOfDay(tx, context, session),
        ...(await readCrew(tx, context, session, people)),
      };
    },
    { task: 'packing' },
  );
}
export type PlanReading = Awaited<ReturnType<typeof readPlan>>;

/** How likely enough people come, as a sum: nobody's own record is shown to anybody. */
async function readCrew(tx: Tx, context: Context, session: PackingSessionRow, people = session.peopleALine) {
  const { storehouseId } = context.actor;
  const hands = await listHands(tx, storehouseId, session.packingSessionId);
  const coming = hands.filter(({ hand }) => hand.state === 'coming' || hand.state === 'came');
  const personIds = coming.map(({ hand }) => hand.personId);
  const shows = await listShows(tx, storehouseId, personIds);
  const lastStations = await listLastStations(tx, storehouseId, { personIds, before: session.startsAt });
  const records: ShowRecord[] = coming.map(({ hand }) => shows.get(hand.personId) ?? { shows: 0, signed: 0 });
  const wanted = people * session.lines;
  return {
    hands,
    lastStations,
    wanted,
    expected: fractionToNumber(expectedComing(records)),
    chance: fractionToNumber(chanceOfAtLeast(records, wanted)),
    moreToAsk: morePeopleToAsk(records, wanted),
  };
}
