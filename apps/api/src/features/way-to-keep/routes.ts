import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, jsonBody, may, queryOf } from '../../platform/http.ts';
import { maySetSupplyPrices } from './policy.ts';
import { presentSupplyPrices, presentWays } from './present.ts';
import { supplyPriceWish, waysQuery } from './schema.ts';
import { findSupplyPrices, findWaysToKeep, setSupplyPrice } from './use-cases.ts';

const TAG = 'Keeping';

export const wayToKeepRoutes = new Hono<AppEnv>()
  .get(
    '/ways-to-keep',
    describe(
      TAG,
      'What a mass of a food can be kept in: what is safe, the cheapest per year first, and why not the rest',
      ['thing-not-found'],
    ),
    queryOf(waysQuery),
    async (c) => c.json(presentWays(await findWaysToKeep(contextOf(c), c.req.valid('query')))),
  )
  .get('/supply-prices', describe(TAG, 'What absorbers and dry ice cost the group'), async (c) =>
    c.json(presentSupplyPrices(await findSupplyPrices(contextOf(c)))),
  )
  .put(
    '/supply-prices',
    describe(TAG, 'Set what one packet or a kilogram of dry ice costs, or say that nobody knows'),
    may(maySetSupplyPrices),
    jsonBody(supplyPriceWish),
    async (c) => c.json(presentSupplyPrices(await setSupplyPrice(contextOf(c), c.req.valid('json')))),
  );
