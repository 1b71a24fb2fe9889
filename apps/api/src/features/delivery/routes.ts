import { Hono } from 'hono';
import { z } from 'zod';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf, pageQuery } from '../../platform/paging.ts';
import { mayLand } from './policy.ts';
import { presentDelivery } from './present.ts';
import { deliveryCounts, deliveryEnd, deliveryFacts } from './schema.ts';
import { addDelivery, countBags, finishDelivery, readDeliveries, readDelivery } from './use-cases.ts';

const TAG = 'Landing';

export const deliveryRoutes = new Hono<AppEnv>()
  .post(
    '/buys/:buy/deliveries',
    describe(TAG, 'Write down that a lorry came; a further one is a further part', [
      'buy-stage-wrong',
      'thing-not-found',
    ]),
    may(mayLand),
    jsonBody(deliveryFacts),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => addDelivery(context, idParam(c, 'buy'), c.req.valid('json')),
        present: presentDelivery,
      }),
  )
  .get(
    '/buys/:buy/deliveries',
    describe(TAG, 'The parts of a delivery in the order that they came'),
    queryOf(pageQuery.extend({ after: z.coerce.number().int().positive().optional() })),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readDeliveries(contextOf(c), idParam(c, 'buy'), query);
      const { rows, next } = pageOf(found, query.limit, ({ delivery }) => String(delivery.partNo));
      const deliveries = rows.map(presentDelivery);
      if (query.format === 'csv')
        return answerCsv(
          c,
          'deliveries',
          deliveries.map(({ counts, ...facts }) => ({
            ...facts,
            countedBags: counts.reduce((sum, { countedBags }) => sum + countedBags, 0),
          })),
        );
      return c.json({ deliveries, next });
    },
  )
  .get('/deliveries/:delivery', describe(TAG, 'One part of a delivery', ['thing-not-found']), async (c) =>
    c.json(presentDelivery(await readDelivery(contextOf(c), idParam(c, 'delivery')))),
  )
  .put(
    '/deliveries/:delivery/counts',
    describe(TAG, 'Count the bags of each size; 0 is a count', [
      'bag-of-another-buy',
      'does-not-add-up',
      'delivery-finished',
      'stale-version',
    ]),
    may(mayLand),
    jsonBody(deliveryCounts),
    async (c) =>
      c.json(presentDelivery(await countBags(contextOf(c), idParam(c, 'delivery'), c.req.valid('json')))),
  )
  .post(
    '/deliveries/:delivery/finish',
    describe(TAG, 'End a part whose counted bags are all numbered', ['does-not-add-up', 'delivery-finished']),
    may(mayLand),
    jsonBody(deliveryEnd),
    async (c) => {
      const { version } = c.req.valid('json');
      return c.json(presentDelivery(await finishDelivery(contextOf(c), idParam(c, 'delivery'), version)));
    },
  );
