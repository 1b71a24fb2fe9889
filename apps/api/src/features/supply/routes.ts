import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { presentPosted } from '../money/use-cases.ts';
import { listFormat } from '../trial-balance/schema.ts';
import { mayKeepSupplies } from './policy.ts';
import { presentSessionSupplies, presentSupplies, presentSupply, supplyCsvRow } from './present.ts';
import { purchase, supplyCount, supplyEdit, supplyWish } from './schema.ts';
import { addSupply, buySupplies, countSupply, editSupply, findSupplies } from './use-cases.ts';
import { planSessionSupplies } from './use-cases-plan.ts';

const TAG = 'Packing sessions';
const keeper = may(mayKeepSupplies);

export const supplyRoutes = new Hono<AppEnv>()
  .get(
    '/supplies',
    describe(TAG, 'What the store has for packing, with its packs and prices'),
    queryOf(listFormat),
    async (c) => {
      const rows = await findSupplies(contextOf(c));
      return c.req.valid('query').format === 'csv'
        ? answerCsv(c, 'supplies', rows.map(supplyCsvRow))
        : c.json(presentSupplies(rows));
    },
  )
  .post(
    '/supplies',
    describe(TAG, 'Keep a further supply', ['already-there']),
    keeper,
    jsonBody(supplyWish),
    async (c) => c.json(presentSupply(await addSupply(contextOf(c), c.req.valid('json'))), 201),
  )
  .put(
    '/supplies/:supply',
    describe(TAG, 'Change how a supply is called or sold, or put it away', ['stale-version', 'in-use']),
    keeper,
    jsonBody(supplyEdit),
    async (c) =>
      c.json(presentSupply(await editSupply(contextOf(c), idParam(c, 'supply'), c.req.valid('json')))),
  )
  .post(
    '/supply-purchases',
    describe(TAG, 'Write down what was bought, and who paid', ['not-enough-left', 'duty-missing']),
    keeper,
    jsonBody(purchase),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => buySupplies(context, c.req.valid('json')),
        present: presentPosted,
      }),
  )
  .post(
    '/supplies/:supply/counts',
    describe(TAG, 'Bring the book to what was counted', ['stale-version', 'nothing-to-post']),
    keeper,
    jsonBody(supplyCount),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => countSupply(context, idParam(c, 'supply'), c.req.valid('json')),
        present: presentPosted,
      }),
  )
  .get(
    '/packing-sessions/:session/supplies',
    describe(TAG, 'What a packing session needs to the piece, what the store has, and what to buy'),
    keeper,
    async (c) =>
      c.json(presentSessionSupplies(await planSessionSupplies(contextOf(c), idParam(c, 'session')))),
  );
