import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayFix, mayPreview, maySeeAllotments } from './policy.ts';
import {
  presentAllotments,
  presentFill,
  presentFixing,
  presentOutlook,
  presentPledgeEffect,
  presentPreview,
} from './present.ts';
import { fixing, pledgePreview } from './schema.ts';
import { fixBuy, previewFixing, previewPledge, readAllotments, readFill, readOutlook } from './use-cases.ts';
import { readPledgeEffect } from './use-cases-effect.ts';

const TAG = 'Fill';

export const fillRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/fill',
    describe(
      TAG,
      'Whole bags from the pledges as they stand, what is missing to the next bag or break, and what it saves',
    ),
    async (c) => c.json(presentFill(await readFill(contextOf(c), idParam(c, 'buy')), c.var.actor)),
  )
  .post(
    '/buys/:buy/preview',
    describe(
      TAG,
      'What a pledge would cost: at today’s fill, with all at their least or most, and at the next break',
      ['household-needed', 'pledge-not-in-order', 'buy-stage-wrong'],
    ),
    may(mayPreview, 'household-needed'),
    jsonBody(pledgePreview),
    async (c) => {
      const preview = await previewPledge(contextOf(c), idParam(c, 'buy'), c.req.valid('json'));
      return c.json(presentPreview(preview, c.var.actor));
    },
  )
  .get(
    '/buys/:buy/outlook',
    describe(TAG, 'What the whole buy would cost now, and with every pledge at its least or its most', [
      'buy-stage-wrong',
    ]),
    may(maySeeAllotments),
    async (c) => c.json(presentOutlook(await readOutlook(contextOf(c), idParam(c, 'buy')), c.var.actor)),
  )
  .get(
    '/buys/:buy/pledge-effect',
    describe(TAG, 'What the own pledges of a fixed buy did for all others, to the cent', [
      'household-needed',
      'buy-stage-wrong',
    ]),
    may(mayPreview, 'household-needed'),
    async (c) => {
      const answer = await readPledgeEffect(contextOf(c), idParam(c, 'buy'));
      return c.json(presentPledgeEffect(answer, c.var.actor));
    },
  )
  .get(
    '/buys/:buy/fixing',
    describe(TAG, 'What fixing would do now, whom it leaves out and why, and what is missing for it', [
      'buy-stage-wrong',
    ]),
    may(mayFix),
    async (c) => c.json(presentFixing(await previewFixing(contextOf(c), idParam(c, 'buy')), c.var.actor)),
  )
  .post(
    '/buys/:buy/fixing',
    describe(TAG, 'Fix the buy: fill it on the locked pledges, promise the grams, ask for deposits', [
      'buy-stage-wrong',
      'buy-guard-unmet',
      'does-not-add-up',
      'quote-not-valid',
    ]),
    may(mayFix),
    jsonBody(fixing),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => fixBuy(context, idParam(c, 'buy'), c.req.valid('json')),
        present: (view) => presentFixing(view, c.var.actor),
      }),
  )
  .get(
    '/buys/:buy/allotments',
    describe(
      TAG,
      'What is promised of each line: the own and the common stock’s, all of them to the duties that need it',
    ),
    async (c) => c.json(presentAllotments(await readAllotments(contextOf(c), idParam(c, 'buy')))),
  );
