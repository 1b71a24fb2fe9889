import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayJoinSessions } from '../packing-session/use-cases.ts';
import { maySettleSessions, seesSettlements } from './policy.ts';
import {
  presentOwnCosts,
  presentReckoned,
  presentSettled,
  presentSettlement,
  presentUndone,
} from './present.ts';
import { settlementPosting, settlementWish, undoing } from './schema.ts';
import { previewSettlement, readSettlement, settleDay, undoSettlement } from './use-cases.ts';
import { readOwnCosts } from './use-cases-own.ts';

const TAG = 'Packing sessions';
const ONE = '/packing-sessions/:session';
const settler = may(maySettleSessions);

export const settlementRoutes = new Hono<AppEnv>()
  .get(
    `${ONE}/settlement`,
    describe(TAG, 'Who filled what, what the log says was used, and what was posted'),
    may(seesSettlements),
    async (c) => c.json(presentSettlement(await readSettlement(contextOf(c), idParam(c, 'session')))),
  )
  .post(
    `${ONE}/settlement-previews`,
    describe(TAG, 'What settling a session would post, to the cent, without posting it', [
      'session-stage-wrong',
      'not-enough-left',
    ]),
    settler,
    jsonBody(settlementWish),
    async (c) =>
      c.json(
        presentReckoned(await previewSettlement(contextOf(c), idParam(c, 'session'), c.req.valid('json'))),
      ),
  )
  .post(
    `${ONE}/settlement`,
    describe(TAG, 'Post what a session cost, as it was shown before', [
      'session-stage-wrong',
      'settlement-moved',
      'not-enough-left',
    ]),
    settler,
    jsonBody(settlementPosting),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => settleDay(context, idParam(c, 'session'), c.req.valid('json')),
        present: presentSettled,
      }),
  )
  .post(
    `${ONE}/settlement/undoing`,
    describe(TAG, 'Take the settlement of a session back as a whole', ['session-stage-wrong']),
    settler,
    jsonBody(undoing),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => undoSettlement(context, idParam(c, 'session'), c.req.valid('json')),
        present: presentUndone,
      }),
  )
  .get(
    `${ONE}/own-costs`,
    describe(TAG, 'What a session costs my household and why, and what to bring'),
    may(mayJoinSessions, 'household-needed'),
    async (c) => c.json(presentOwnCosts(await readOwnCosts(contextOf(c), idParam(c, 'session')))),
  );
