import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, may, queryOf } from '../../platform/http.ts';
import { hasCoverage, maySeeTotals } from './policy.ts';
import { presentCoverage, presentGap, presentTotals, presentWhoMayNotEat } from './present.ts';
import { gapQuery } from './schema.ts';
import { closeGapInBuy, readCoverage, readTotals, readWhoMayNotEat } from './use-cases.ts';

const TAG = 'Coverage';

export const coverageRoutes = new Hono<AppEnv>()
  .get(
    '/coverage',
    describe(TAG, 'How long my stock feeds my household'),
    may(hasCoverage, 'household-needed'),
    async (c) => c.json(presentCoverage(await readCoverage(contextOf(c)))),
  )
  .get(
    '/coverage/gap',
    describe(TAG, 'The cheapest way to my target in an open buy', ['buy-stage-wrong']),
    may(hasCoverage, 'household-needed'),
    queryOf(gapQuery),
    async (c) => c.json(presentGap(await closeGapInBuy(contextOf(c), c.req.valid('query')))),
  )
  .get(
    '/coverage/totals',
    describe(TAG, 'All households together, held back below five'),
    may(maySeeTotals),
    async (c) => c.json(presentTotals(await readTotals(contextOf(c)))),
  )
  .get(
    '/containers/:container/eaters',
    describe(TAG, 'Who of my household may not eat what is in one of my containers'),
    may(hasCoverage, 'household-needed'),
    async (c) => c.json(presentWhoMayNotEat(await readWhoMayNotEat(contextOf(c), idParam(c, 'container')))),
  );
