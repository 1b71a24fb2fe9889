import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayLookAtLids } from './policy.ts';
import { presentLids } from './present.ts';
import { lidAnswers, lidClosings, lidQuery } from './schema.ts';
import { answerLids, closeLidsAgain, readLids } from './use-cases.ts';

const TAG = 'Seams and seals';
const whoLooks = may(mayLookAtLids, 'household-needed');

export const lidRoutes = new Hono<AppEnv>()
  .get(
    '/lids',
    describe(TAG, 'Jars whose lids are to be looked at a day after they were closed, or were found loose', [
      'duty-missing',
    ]),
    whoLooks,
    queryOf(lidQuery),
    async (c) => c.json(presentLids(await readLids(contextOf(c), c.req.valid('query')))),
  )
  .post(
    '/lids/answers',
    describe(TAG, 'Say of many jars that their lids held, and of some that they did not', [
      'lid-too-early',
      'lid-found-loose',
      'thing-not-found',
    ]),
    whoLooks,
    jsonBody(lidAnswers),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => answerLids(context, c.req.valid('json')),
        present: (answered) => answered,
      }),
  )
  .post(
    '/lids/closings',
    describe(TAG, 'Write down that jars were closed again; their lids are looked at a day later', [
      'thing-not-found',
    ]),
    whoLooks,
    jsonBody(lidClosings),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => closeLidsAgain(context, c.req.valid('json')),
        present: (closed) => closed,
      }),
  );
