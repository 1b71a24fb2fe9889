import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import type { Context } from '../../platform/context.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { listFormat } from '../trial-balance/schema.ts';
import { mayLogPours, maySeeLog } from './policy.ts';
import {
  pourCsvRows,
  presentBringable,
  presentLog,
  presentPack,
  presentPoured,
  presentQueue,
} from './present.ts';
import * as body from './schema.ts';
import {
  bringBag,
  closePack,
  logLoss,
  logPours,
  openPack,
  readBringable,
  readLog,
  signSession,
  undoPours,
  weighLeft,
} from './use-cases.ts';
import { sayQueue } from './use-cases-queue.ts';

const TAG = 'Packing sessions';
const ONE = '/packing-sessions/:session';
const logger = may(mayLogPours);

export const pourLogRoutes = new Hono<AppEnv>()
  .get(
    `${ONE}/log`,
    describe(TAG, 'Every container of a session, with what came and what is unaccounted for'),
    may(maySeeLog),
    queryOf(listFormat),
    async (c) => {
      const log = await readLog(contextOf(c), idParam(c, 'session'));
      return c.req.valid('query').format === 'csv'
        ? answerCsv(c, 'pour-log', pourCsvRows(log))
        : c.json(presentLog(log));
    },
  )
  .get(
    `${ONE}/bringable-bags`,
    describe(TAG, 'The bags that may come to the line, of those who want something packed'),
    logger,
    async (c) => {
      const bags = await readBringable(contextOf(c), idParam(c, 'session'));
      return c.json({ bags: bags.map(presentBringable) });
    },
  )
  .post(
    `${ONE}/bags`,
    describe(TAG, 'A household’s part of a bag comes to the line', ['session-stage-wrong', 'bag-on-hold']),
    logger,
    jsonBody(body.bringBag),
    async (c) => c.json(presentLog(await bringBag(contextOf(c), idParam(c, 'session'), c.req.valid('json')))),
  )
  .post(
    `${ONE}/pours`,
    describe(TAG, 'Log containers that a line has closed', [
      'not-enough-left',
      'over-capacity',
      'treatment-does-not-fit',
      'bag-on-hold',
      'line-is-stopped',
      'label-used',
      'label-does-not-fit',
      'container-ended',
      'on-hold',
    ]),
    logger,
    jsonBody(body.pourWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => logPours(context, idParam(c, 'session'), c.req.valid('json')),
        present: presentPoured,
      }),
  )
  .post(
    `${ONE}/pours/:entry/undoing`,
    describe(TAG, 'Put what one entry poured back into its bag', ['already-reversed', 'cannot-reverse']),
    logger,
    jsonBody(body.undoing),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) =>
          undoPours(context, idParam(c, 'session'), { entryId: idParam(c, 'entry'), ...c.req.valid('json') }),
        present: (entry) => entry,
      }),
  )
  .post(
    `${ONE}/losses`,
    describe(TAG, 'What was spilled, or taken as a sample', ['not-enough-left']),
    logger,
    jsonBody(body.lossWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => logLoss(context, idParam(c, 'session'), c.req.valid('json')),
        present: presentLog,
      }),
  )
  .put(
    `${ONE}/left`,
    describe(TAG, 'What was weighed back of a bag; with an Idempotency-Key a retry counts once', [
      'session-stage-wrong',
    ]),
    logger,
    jsonBody(body.leftWish),
    async (c) => {
      const run = (context: Context) => weighLeft(context, idParam(c, 'session'), c.req.valid('json'));
      // What waited on a phone and is sent again must not cover a figure that somebody weighed meanwhile.
      return c.req.header('Idempotency-Key') === undefined
        ? c.json(presentLog(await run(contextOf(c))))
        : answerOnce(c, { status: 200, run, present: presentLog });
    },
  )
  .post(
    `${ONE}/signing`,
    describe(TAG, 'Sign the mass of a session', ['cannot-sign', 'session-stage-wrong']),
    logger,
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => signSession(context, idParam(c, 'session')),
        present: presentLog,
      }),
  )
  .post(
    `${ONE}/queues`,
    describe(TAG, 'Say how many containers wait in front of a station', ['session-stage-wrong']),
    jsonBody(body.queueWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => sayQueue(context, idParam(c, 'session'), c.req.valid('json')),
        present: presentQueue,
      }),
  )
  .post(
    `${ONE}/absorber-packs`,
    describe(TAG, 'Open a pack of absorbers; its clock starts', ['session-stage-wrong']),
    logger,
    jsonBody(body.packWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => openPack(context, idParam(c, 'session'), c.req.valid('json')),
        present: (pack) => presentPack(pack, pack.openedAt),
      }),
  )
  .post(
    `${ONE}/absorber-packs/:pack/shutting`,
    describe(TAG, 'Put what is left of a pack into its jar', ['already-there']),
    logger,
    jsonBody(body.packShut),
    async (c) => {
      const wish = { packId: idParam(c, 'pack'), ...c.req.valid('json') };
      const pack = await closePack(contextOf(c), idParam(c, 'session'), wish);
      return c.json(presentPack(pack, pack.openedAt));
    },
  );
