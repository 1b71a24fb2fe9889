import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, may } from '../../platform/http.ts';
import { mayEndLanding } from './policy.ts';
import { presentLanded, presentLandingSheet } from './present.ts';
import { landBuy, readLandingSheet } from './use-cases.ts';

const TAG = 'Landing';

export const landingRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/landing',
    describe(TAG, 'The landing sheet: ordered, counted and short, bag by bag, and what to claim'),
    async (c) => c.json(presentLandingSheet(await readLandingSheet(contextOf(c), idParam(c, 'buy')))),
  )
  .post(
    '/buys/:buy/landing',
    describe(TAG, 'End the landing: every ordered food is counted, every counted bag numbered', [
      'buy-stage-wrong',
      'buy-guard-unmet',
    ]),
    may(mayEndLanding),
    async (c) => c.json(presentLanded(await landBuy(contextOf(c), idParam(c, 'buy')))),
  );
