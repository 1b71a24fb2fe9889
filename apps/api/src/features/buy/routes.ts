import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayRunBuys } from './policy.ts';
import { presentBuy, presentBuyPage, presentBuys, presentStageMoves } from './present.ts';
import { buyEdit, buyQuery, buyWish, landingPlanEdit, lineEdit, lineWish, stageWish } from './schema.ts';
import {
  addLine,
  editBuy,
  editLine,
  findBuys,
  moveLanding,
  openForPledges,
  planBuy,
  readBuy,
  readStageMoves,
  removeLine,
} from './use-cases.ts';

const TAG = 'Buys';

export const buyRoutes = new Hono<AppEnv>()
  .get('/buys', describe(TAG, 'Buys, the newest first'), queryOf(buyQuery), async (c) => {
    const query = c.req.valid('query');
    const page = await findBuys(contextOf(c), query);
    if (query.format === 'csv') return answerCsv(c, 'buys', page.rows.map(presentBuy));
    return c.json(presentBuys(page));
  })
  .post(
    '/buys',
    describe(TAG, 'Plan a buy', ['already-there', 'thing-not-found']),
    may(mayRunBuys),
    jsonBody(buyWish),
    async (c) => c.json(presentBuyPage(await planBuy(contextOf(c), c.req.valid('json')), c.var.actor), 201),
  )
  .get(
    '/buys/:buy',
    describe(TAG, 'Where a buy stands: lines, what is pledged, the next step and what it lacks'),
    async (c) => c.json(presentBuyPage(await readBuy(contextOf(c), idParam(c, 'buy')), c.var.actor)),
  )
  .put(
    '/buys/:buy',
    describe(TAG, 'Change name, days and place', ['stale-version', 'buy-stage-wrong', 'buy-guard-unmet']),
    may(mayRunBuys),
    jsonBody(buyEdit),
    async (c) => {
      const page = await editBuy(contextOf(c), idParam(c, 'buy'), c.req.valid('json'));
      return c.json(presentBuyPage(page, c.var.actor));
    },
  )
  .put(
    '/buys/:buy/landing-plan',
    describe(TAG, 'Move the day or the place at which a fixed or ordered buy lands', [
      'stale-version',
      'buy-stage-wrong',
    ]),
    may(mayRunBuys),
    jsonBody(landingPlanEdit),
    async (c) => c.json(presentBuy(await moveLanding(contextOf(c), idParam(c, 'buy'), c.req.valid('json')))),
  )
  .post(
    '/buys/:buy/lines',
    describe(TAG, 'Add a food while nobody has pledged', ['already-there', 'in-use', 'buy-stage-wrong']),
    may(mayRunBuys),
    jsonBody(lineWish),
    async (c) => {
      const page = await addLine(contextOf(c), idParam(c, 'buy'), c.req.valid('json'));
      return c.json(presentBuyPage(page, c.var.actor), 201);
    },
  )
  .put(
    '/buys/:buy/lines/:line',
    describe(TAG, 'Change steps, rule and cap of a line', ['stale-version', 'in-use', 'buy-stage-wrong']),
    may(mayRunBuys),
    jsonBody(lineEdit),
    async (c) => {
      const named = { buyId: idParam(c, 'buy'), buyLineId: idParam(c, 'line') };
      const page = await editLine(contextOf(c), named, c.req.valid('json'));
      return c.json(presentBuyPage(page, c.var.actor));
    },
  )
  .delete(
    '/buys/:buy/lines/:line',
    describe(TAG, 'Take a food off while nobody has pledged', ['in-use', 'buy-stage-wrong']),
    may(mayRunBuys),
    async (c) => {
      const named = { buyId: idParam(c, 'buy'), buyLineId: idParam(c, 'line') };
      return c.json(presentBuyPage(await removeLine(contextOf(c), named), c.var.actor));
    },
  )
  .post(
    '/buys/:buy/stage',
    describe(TAG, 'Open a planned buy for pledges', [
      'buy-guard-unmet',
      'buy-stage-wrong',
      'deadline-passed',
    ]),
    may(mayRunBuys),
    jsonBody(stageWish),
    async (c) => {
      const page = await openForPledges(contextOf(c), idParam(c, 'buy'), c.req.valid('json'));
      return c.json(presentBuyPage(page, c.var.actor));
    },
  )
  .get('/buys/:buy/stage-moves', describe(TAG, 'Every move of a buy’s stage, with who and why'), async (c) =>
    c.json(presentStageMoves(await readStageMoves(contextOf(c), idParam(c, 'buy')))),
  );
