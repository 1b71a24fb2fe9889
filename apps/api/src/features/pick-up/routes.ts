import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayHandOver, mayPickUp, mayTakeUncollected } from './policy.ts';
import { presentPickUp, presentPickUps, presentTaken, presentUncollected } from './present.ts';
import { cameWish, collection, pickUpEdit, pickUpWish, uncollectedWish, wholeList } from './schema.ts';
import {
  editPickUp,
  planPickUp,
  readOwnPickUps,
  readPickUpsOfBuy,
  readUncollected,
  signCollection,
  signWhoCame,
  takeUncollected,
} from './use-cases.ts';

const TAG = 'Pick-up';

export const pickUpRoutes = new Hono<AppEnv>()
  .get(
    '/pick-ups',
    describe(TAG, 'One’s own appointments, the next first', ['household-needed']),
    async (c) => c.json({ pickUps: (await readOwnPickUps(contextOf(c))).map(presentPickUp) }),
  )
  .get(
    '/buys/:buy/pick-ups',
    describe(TAG, 'Who fetches what of a buy, and what still waits'),
    queryOf(wholeList),
    async (c) => {
      const found = presentPickUps(await readPickUpsOfBuy(contextOf(c), idParam(c, 'buy')));
      if (c.req.valid('query').format === 'json') return c.json(found);
      const rows = found.pickUps.map(({ seat, name, startsAt, endsAt, signedBy, collectedAt, pieces }) => ({
        ...{ seat, name, startsAt, endsAt, signedBy, collectedAt },
        grams: pieces.reduce((sum, piece) => sum + piece.grams, 0),
      }));
      return answerCsv(c, 'pick-ups', rows);
    },
  )
  .post(
    '/buys/:buy/pick-ups',
    describe(TAG, 'Plan when a household fetches its food', ['buy-stage-wrong', 'not-your-household']),
    may(mayPickUp, 'household-needed'),
    jsonBody(pickUpWish),
    async (c) => {
      const planned = await planPickUp(contextOf(c), idParam(c, 'buy'), c.req.valid('json'));
      return c.json(presentPickUp(planned), 201);
    },
  )
  .put(
    '/pick-ups/:pickUp',
    describe(TAG, 'Move the hour of a pick-up', ['stale-version', 'already-collected', 'not-your-household']),
    may(mayPickUp, 'household-needed'),
    jsonBody(pickUpEdit),
    async (c) =>
      c.json(presentPickUp(await editPickUp(contextOf(c), idParam(c, 'pickUp'), c.req.valid('json')))),
  )
  .post(
    '/pick-ups/:pickUp/collection',
    describe(TAG, 'Sign off who took what', [
      'buy-stage-wrong',
      'already-collected',
      'not-enough-left',
      'bag-on-hold',
      'not-your-household',
    ]),
    may(mayPickUp, 'household-needed'),
    jsonBody(collection),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => signCollection(context, idParam(c, 'pickUp'), c.req.valid('json')),
        present: presentPickUp,
      }),
  )
  .post(
    '/buys/:buy/collections',
    describe(TAG, 'Sign off who came and took what, with an appointment or without', [
      'buy-stage-wrong',
      'not-enough-left',
      'bag-on-hold',
      'not-your-household',
    ]),
    may(mayPickUp, 'household-needed'),
    jsonBody(cameWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => signWhoCame(context, idParam(c, 'buy'), c.req.valid('json')),
        present: presentPickUp,
      }),
  )
  .get(
    '/buys/:buy/uncollected',
    describe(TAG, 'What nobody has fetched yet, and until when each household may', ['buy-stage-wrong']),
    may(mayHandOver),
    async (c) => c.json(presentUncollected(await readUncollected(contextOf(c), idParam(c, 'buy')))),
  )
  .post(
    '/buys/:buy/uncollected/:household',
    describe(TAG, 'Take to common stock what a household never fetched', [
      'buy-stage-wrong',
      'buy-guard-unmet',
      'not-enough-left',
    ]),
    may(mayTakeUncollected),
    jsonBody(uncollectedWish),
    (c) => {
      const where = { buyId: idParam(c, 'buy'), householdId: idParam(c, 'household') };
      return answerOnce(c, {
        status: 201,
        run: (context) => takeUncollected(context, where, c.req.valid('json')),
        present: presentTaken,
      });
    },
  );
