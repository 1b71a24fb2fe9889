import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayJoinSessions, mayPlanSessions } from './policy.ts';
import {
  presentHands,
  presentOwnSlot,
  presentOwnWish,
  presentPlan,
  presentReading,
  presentSessions,
  sessionCsvRow,
} from './present.ts';
import { presentSession } from './present-session.ts';
import {
  arrival,
  attendance,
  callOff,
  handWish,
  mixPosting,
  mixUndoing,
  planQuery,
  sessionEdit,
  sessionQuery,
  sessionWish,
  slotWish,
  wishList,
} from './schema.ts';
import {
  callOffSession,
  changeHand,
  changeWishes,
  editSession,
  findSessions,
  openSession,
  readPlan,
  readSession,
  tickHand,
} from './use-cases.ts';
import { sayArrival } from './use-cases-arrival.ts';
import { postMix, undoMix } from './use-cases-mixing.ts';
import { bookSlot, giveSlotBack, readFreeTimes } from './use-cases-slots.ts';
import { startSession } from './use-cases-start.ts';

const TAG = 'Packing sessions';
const ONE = '/packing-sessions/:session';
const planner = may(mayPlanSessions);
const ofHousehold = may(mayJoinSessions, 'household-needed');

export const packingSessionRoutes = new Hono<AppEnv>()
  .get(
    '/packing-sessions',
    describe(TAG, 'Packing sessions, the newest first'),
    queryOf(sessionQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = await findSessions(contextOf(c), query);
      return query.format === 'csv'
        ? answerCsv(c, 'packing-sessions', page.rows.map(sessionCsvRow))
        : c.json(presentSessions(page));
    },
  )
  .post(
    '/packing-sessions',
    describe(TAG, 'Open a session for wishes, times and hands', ['already-there']),
    planner,
    jsonBody(sessionWish),
    async (c) => c.json(presentSession(await openSession(contextOf(c), c.req.valid('json'))), 201),
  )
  .get(ONE, describe(TAG, 'One session, with what is mine in it', ['thing-not-found']), async (c) =>
    c.json(presentReading(await readSession(contextOf(c), idParam(c, 'session')))),
  )
  .put(
    ONE,
    describe(TAG, 'Change a session that has not begun', ['stale-version', 'in-use', 'session-stage-wrong']),
    planner,
    jsonBody(sessionEdit),
    async (c) =>
      c.json(presentSession(await editSession(contextOf(c), idParam(c, 'session'), c.req.valid('json')))),
  )
  .post(
    `${ONE}/calling-off`,
    describe(TAG, 'Call a session off; everyone is told', ['session-stage-wrong']),
    planner,
    jsonBody(callOff),
    async (c) => {
      const { because } = c.req.valid('json');
      return c.json(presentSession(await callOffSession(contextOf(c), idParam(c, 'session'), because)));
    },
  )
  .post(
    `${ONE}/start`,
    describe(TAG, 'Begin: what is wanted stands, and food may be poured', [
      'session-stage-wrong',
      'allergen-clash',
    ]),
    planner,
    async (c) => c.json(presentSession(await startSession(contextOf(c), idParam(c, 'session')))),
  )
  .get(
    `${ONE}/plan`,
    describe(TAG, 'The whole day: runs, crew and clock, and who is likely to come'),
    planner,
    queryOf(planQuery),
    async (c) => {
      const { people } = c.req.valid('query');
      return c.json(presentPlan(await readPlan(contextOf(c), idParam(c, 'session'), people)));
    },
  )
  .post(
    `${ONE}/mixes`,
    describe(TAG, 'Book the grams that change hands in a run of several households’ food', [
      'mix-moved',
      'already-there',
      'bag-on-hold',
      'session-stage-wrong',
    ]),
    planner,
    jsonBody(mixPosting),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => postMix(context, idParam(c, 'session'), c.req.valid('json')),
        present: (posted) => posted,
      }),
  )
  .post(
    `${ONE}/mixes/undoing`,
    describe(TAG, 'Give back the grams that changed hands in a mixed run', [
      'already-reversed',
      'cannot-reverse',
    ]),
    planner,
    jsonBody(mixUndoing),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => undoMix(context, idParam(c, 'session'), c.req.valid('json')),
        present: (entry) => entry,
      }),
  )
  .put(
    `${ONE}/wishes`,
    describe(TAG, 'Say what my household wants packed', [
      'not-enough-left',
      'over-capacity',
      'treatment-does-not-fit',
      'session-stage-wrong',
    ]),
    ofHousehold,
    jsonBody(wishList),
    async (c) => {
      const wishes = await changeWishes(contextOf(c), idParam(c, 'session'), c.req.valid('json'));
      return c.json({ wishes: wishes.map(presentOwnWish) });
    },
  )
  .get(
    `${ONE}/free-times`,
    describe(TAG, 'How long my containers take on a line, and when they could begin'),
    ofHousehold,
    async (c) => {
      const { minutes, starts } = await readFreeTimes(contextOf(c), idParam(c, 'session'));
      const shown = starts.map(({ startMs, endMs }) => ({
        from: new Date(startMs).toISOString(),
        until: new Date(endMs).toISOString(),
      }));
      return c.json({ minutes, starts: shown });
    },
  )
  .post(
    `${ONE}/slots`,
    describe(TAG, 'Book my time on a line, or wait for one', [
      'line-taken',
      'already-there',
      'nothing-to-post',
    ]),
    ofHousehold,
    jsonBody(slotWish),
    async (c) => {
      const slot = await bookSlot(contextOf(c), idParam(c, 'session'), c.req.valid('json'));
      const { packingSlotId: id, line, state } = slot;
      return c.json(
        { id, line, state, startsAt: slot.startsAt.toISOString(), endsAt: slot.endsAt.toISOString() },
        201,
      );
    },
  )
  .post(
    `${ONE}/slots/:slot/giving-back`,
    describe(TAG, 'Give a time back; whoever waited gets it', ['not-your-household', 'session-stage-wrong']),
    async (c) => {
      await giveSlotBack(contextOf(c), idParam(c, 'session'), idParam(c, 'slot'));
      return c.body(null, 204);
    },
  )
  .put(
    `${ONE}/slots/:slot/arrival`,
    describe(TAG, 'Say that a household stands at its line; one that comes late gets the next free time', [
      'not-your-household',
      'session-stage-wrong',
    ]),
    jsonBody(arrival),
    async (c) => {
      const ids = { sessionId: idParam(c, 'session'), slotId: idParam(c, 'slot') };
      return c.json(presentOwnSlot(await sayArrival(contextOf(c), ids, c.req.valid('json'))));
    },
  )
  .put(
    `${ONE}/hand`,
    describe(TAG, 'Say whether I come to help', ['too-young-for-machine']),
    jsonBody(handWish),
    async (c) => {
      const hands = await changeHand(contextOf(c), idParam(c, 'session'), c.req.valid('json'));
      const { personId } = c.var.actor;
      return c.json(presentHands(hands.filter(({ hand }) => hand.personId === personId)));
    },
  )
  .put(
    `${ONE}/hands/:person`,
    describe(TAG, 'Tick whether somebody came'),
    planner,
    jsonBody(attendance),
    async (c) => {
      const { state } = c.req.valid('json');
      const wish = { personId: idParam(c, 'person'), state };
      return c.json(presentHands(await tickHand(contextOf(c), idParam(c, 'session'), wish)));
    },
  );
