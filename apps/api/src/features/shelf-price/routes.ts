import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayNoteShelfPrices, mayReadSavings } from './policy.ts';
import { presentSavings, presentShelfPrice, presentShelfPrices } from './present.ts';
import { savingsQuery, shelfPriceWish } from './schema.ts';
import { noteShelfPrice, readSavings, readShelfPrices, takeBackShelfPrice } from './use-cases.ts';

const reads = may(mayReadSavings);
const notes = may(mayNoteShelfPrices);

export const shelfPriceRoutes = new Hono<AppEnv>()
  .get(
    '/savings',
    describe('Buys', 'What was saved against shelf price in a year, food by food'),
    reads,
    queryOf(savingsQuery),
    async (c) => c.json(presentSavings(await readSavings(contextOf(c), c.req.valid('query')))),
  )
  .get('/shelf-prices', describe('Buys', 'What foods cost in a shop, as it was noted'), reads, async (c) =>
    c.json(presentShelfPrices(await readShelfPrices(contextOf(c)))),
  )
  .post(
    '/shelf-prices',
    describe('Buys', 'Note what a food costs in a shop'),
    notes,
    jsonBody(shelfPriceWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => noteShelfPrice(context, c.req.valid('json')),
        present: presentShelfPrice,
      }),
  )
  .delete(
    '/shelf-prices/:shelfPrice',
    describe('Buys', 'Take back a price that was noted wrong'),
    notes,
    async (c) => c.json(presentShelfPrices(await takeBackShelfPrice(contextOf(c), idParam(c, 'shelfPrice')))),
  );
