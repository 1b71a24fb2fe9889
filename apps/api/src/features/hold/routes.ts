import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf } from '../../platform/paging.ts';
import { mayAnswerRecall, mayDestroy, mayHold } from './policy.ts';
import { holdRow, presentHold, presentOwnPart, presentSlip, presentStanding } from './present.ts';
import {
  destruction,
  holdAnswer,
  holdFinding,
  holdQuery,
  holdReason,
  newHold,
  recallSlip,
} from './schema.ts';
import { agreeToRelease, askForRelease, holdBag, readHold, readHolds } from './use-cases.ts';
import { answerRecall, destroyHeld, readOwnPart, readStanding } from './use-cases-recall.ts';
import { beginScopeHold } from './use-cases-scope.ts';
import { keySlip } from './use-cases-slip.ts';

const TAG = 'Holds';

export const holdRoutes = new Hono<AppEnv>()
  .post(
    '/bags/:bag/holds',
    describe(TAG, 'Put a bag on hold: nothing leaves it', ['bag-already-held', 'not-enough-left']),
    may(mayHold),
    jsonBody(holdReason),
    async (c) =>
      c.json(
        presentHold(c.get('actor'), await holdBag(contextOf(c), idParam(c, 'bag'), c.req.valid('json'))),
        201,
      ),
  )
  .post(
    '/holds',
    describe(
      TAG,
      'Put everything on hold that a lot, a mark, a delivery, a session, a food of some days or a place reaches',
      ['already-on-hold', 'nothing-to-hold'],
    ),
    may(mayHold),
    jsonBody(newHold),
    async (c) =>
      c.json(presentHold(c.get('actor'), await beginScopeHold(contextOf(c), c.req.valid('json'))), 201),
  )
  .get(
    '/holds',
    describe(TAG, 'Holds, oldest first; `open` for those that stand'),
    queryOf(holdQuery),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readHolds(contextOf(c), query);
      const { rows, next } = pageOf(found, query.limit, ({ hold }) => hold.holdId);
      const actor = c.get('actor');
      return query.format === 'csv'
        ? answerCsv(
            c,
            'holds',
            rows.map((row) => holdRow(actor, row)),
          )
        : c.json({ holds: rows.map((row) => presentHold(actor, row)), next });
    },
  )
  .get('/holds/:hold', describe(TAG, 'One hold', ['thing-not-found']), async (c) =>
    c.json(presentHold(c.get('actor'), await readHold(contextOf(c), idParam(c, 'hold')))),
  )
  .post(
    '/holds/:hold/release-request',
    describe(TAG, 'Write down what was found and ask for the release', ['hold-ended']),
    may(mayHold),
    jsonBody(holdFinding),
    async (c) =>
      c.json(
        presentHold(
          c.get('actor'),
          await askForRelease(contextOf(c), idParam(c, 'hold'), c.req.valid('json')),
        ),
      ),
  )
  .post(
    '/holds/:hold/release',
    describe(TAG, 'Agree to a release as the second of two', ['second-login-needed', 'hold-ended']),
    may(mayHold),
    async (c) => c.json(presentHold(c.get('actor'), await agreeToRelease(contextOf(c), idParam(c, 'hold')))),
  )
  .get(
    '/holds/:hold/standing',
    describe(TAG, 'How far a recall has come: who was told, has acknowledged it and said what', [
      'thing-not-found',
    ]),
    may(mayHold),
    async (c) => c.json(presentStanding(await readStanding(contextOf(c), idParam(c, 'hold')))),
  )
  .get(
    '/holds/:hold/own-part',
    describe(TAG, 'What my household has of it, and what it said', ['thing-not-found']),
    may(mayAnswerRecall),
    async (c) => c.json(presentOwnPart(await readOwnPart(contextOf(c), idParam(c, 'hold')))),
  )
  .put(
    '/holds/:hold/answer',
    describe(TAG, 'Say that my household has some, ate it or gave it away', ['thing-not-found']),
    may(mayAnswerRecall),
    jsonBody(holdAnswer),
    async (c) =>
      c.json(presentOwnPart(await answerRecall(contextOf(c), idParam(c, 'hold'), c.req.valid('json')))),
  )
  .post(
    '/holds/:hold/slips',
    describe(TAG, 'Key in the slip of a recall notice that came back on paper', [
      'thing-not-found',
      'hold-ended',
    ]),
    may(mayHold),
    jsonBody(recallSlip),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => keySlip(context, idParam(c, 'hold'), c.req.valid('json')),
        present: presentSlip,
      }),
  )
  .post(
    '/holds/:hold/destruction',
    describe(TAG, 'Throw away all that is mine, or the store’s, of what is on hold', [
      'hold-ended',
      'nothing-to-hold',
    ]),
    may(mayDestroy),
    jsonBody(destruction),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => destroyHeld(context, idParam(c, 'hold'), c.req.valid('json')),
        present: ({ grams, codes }) => ({ grams, codes }),
      }),
  );
