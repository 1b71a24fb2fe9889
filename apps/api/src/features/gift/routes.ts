import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayGive } from './policy.ts';
import {
  presentCandidate,
  presentManifest,
  presentManifests,
  presentMatching,
  presentQueue,
  presentStep,
  presentYear,
} from './present.ts';
import {
  giftFactsWish,
  ladderStepWish,
  manifestWish,
  matchingWish,
  reasonWish,
  receiptWish,
  yearQuery,
} from './schema.ts';
import { matchTrips, readMatching, readQueue, readYear, sayFacts, takeStep } from './use-cases.ts';
import {
  callOff,
  readManifest,
  readManifests,
  signOut,
  undoReceipt,
  writeReceipt,
} from './use-cases-manifest.ts';

const TAG = 'Keeping';
const gives = may(mayGive);

export const giftRoutes = new Hono<AppEnv>()
  .get('/giving-queue', describe(TAG, 'What may be given, what closes first in front'), async (c) =>
    c.json(presentQueue(await readQueue(contextOf(c)))),
  )
  .put(
    '/containers/:container/gift-facts',
    describe(TAG, 'Say who sealed a container, what its label says, what was seen of it'),
    gives,
    jsonBody(giftFactsWish),
    async (c) =>
      c.json(presentCandidate(await sayFacts(contextOf(c), idParam(c, 'container'), c.req.valid('json')))),
  )
  .post(
    '/containers/:container/ladder-steps',
    describe(TAG, 'Send a whole container to animals, the compost or the bin', ['gift-refused']),
    gives,
    jsonBody(ladderStepWish),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => takeStep(context, idParam(c, 'container'), c.req.valid('json')),
        present: presentStep,
      }),
  )
  .post(
    '/gift-matchings',
    describe(TAG, 'Match what may be given with trips to pantries'),
    gives,
    jsonBody(matchingWish),
    async (c) => c.json(presentMatching(await matchTrips(contextOf(c), c.req.valid('json'))), 201),
  )
  .get('/gift-matchings/:matching', describe(TAG, 'A matching with every refusal'), async (c) =>
    c.json(presentMatching(await readMatching(contextOf(c), idParam(c, 'matching')))),
  )
  .get('/gift-manifests', describe(TAG, 'Manifests, the newest first'), async (c) =>
    c.json(presentManifests(await readManifests(contextOf(c)))),
  )
  .post(
    '/gift-manifests',
    describe(TAG, 'Sign a trip of a matching out', ['gift-refused']),
    gives,
    jsonBody(manifestWish),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => signOut(context, c.req.valid('json')),
        present: presentManifest,
      }),
  )
  .get('/gift-manifests/:manifest', describe(TAG, 'A manifest with its receipt'), async (c) =>
    c.json(presentManifest(await readManifest(contextOf(c), idParam(c, 'manifest')))),
  )
  .post(
    '/gift-manifests/:manifest/receipt',
    describe(TAG, 'Write down what a pantry accepted and what came back', ['gift-refused', 'stale-version']),
    gives,
    jsonBody(receiptWish),
    async (c) =>
      answerOnce(c, {
        status: 200,
        run: (context) => writeReceipt(context, idParam(c, 'manifest'), c.req.valid('json')),
        present: presentManifest,
      }),
  )
  .post(
    '/gift-manifests/:manifest/receipt-undoing',
    describe(TAG, 'Take a receipt back', ['gift-refused', 'stale-version']),
    gives,
    jsonBody(reasonWish),
    async (c) =>
      answerOnce(c, {
        status: 200,
        run: (context) => undoReceipt(context, idParam(c, 'manifest'), c.req.valid('json')),
        present: presentManifest,
      }),
  )
  .post(
    '/gift-manifests/:manifest/calling-off',
    describe(TAG, 'Call a trip off before its receipt', ['gift-refused', 'stale-version']),
    gives,
    jsonBody(reasonWish),
    async (c) =>
      answerOnce(c, {
        status: 200,
        run: (context) => callOff(context, idParam(c, 'manifest'), c.req.valid('json')),
        present: presentManifest,
      }),
  )
  .get(
    '/gift-year',
    describe(TAG, 'The gifts of a year, and those of my household'),
    queryOf(yearQuery),
    async (c) => c.json(presentYear(await readYear(contextOf(c), c.req.valid('query')))),
  );
