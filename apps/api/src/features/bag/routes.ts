import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf } from '../../platform/paging.ts';
import { mayHandleBags } from './policy.ts';
import { presentBag, presentBags } from './present.ts';
import { bagDiscard, bagEdit, bagLoss, bagQuery, bagWeight, newBags } from './schema.ts';
import { editBag, numberBags, readBag, readBags } from './use-cases.ts';
import { discardBag, loseFromBag, weighBag } from './use-cases-weigh.ts';

const TAG = 'Landing';

export const bagRoutes = new Hono<AppEnv>()
  .post(
    '/deliveries/:delivery/bags',
    describe(TAG, 'Number the bags of a delivery, with weight, mark and condition; accepted ones land', [
      'bag-of-another-buy',
      'does-not-add-up',
      'delivery-finished',
      'buy-stage-wrong',
    ]),
    may(mayHandleBags),
    jsonBody(newBags),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => numberBags(context, idParam(c, 'delivery'), c.req.valid('json')),
        present: presentBags,
      }),
  )
  .get('/buys/:buy/bags', describe(TAG, 'The numbered bags of a buy'), queryOf(bagQuery), async (c) => {
    const query = c.req.valid('query');
    const found = await readBags(contextOf(c), idParam(c, 'buy'), query);
    const { rows, next } = pageOf(found, query.limit, ({ bag }) => bag.bagId);
    const bags = rows.map(presentBag);
    return query.format === 'csv' ? answerCsv(c, 'bags', bags) : c.json({ bags, next });
  })
  .get('/bags/:bag', describe(TAG, 'One bag', ['thing-not-found']), async (c) =>
    c.json(presentBag(await readBag(contextOf(c), idParam(c, 'bag')))),
  )
  .put(
    '/bags/:bag',
    describe(TAG, 'Change condition, decision or note; a bag refused after all goes back', [
      'stale-version',
      'cannot-reverse',
      'buy-stage-wrong',
    ]),
    may(mayHandleBags),
    jsonBody(bagEdit),
    async (c) => c.json(presentBag(await editBag(contextOf(c), idParam(c, 'bag'), c.req.valid('json')))),
  )
  .put(
    '/bags/:bag/weight',
    describe(TAG, 'Weigh a bag once; again only with a reason', [
      'bag-of-another-buy',
      'bag-already-weighed',
      'does-not-add-up',
      'stale-version',
    ]),
    may(mayHandleBags),
    jsonBody(bagWeight),
    async (c) => c.json(presentBag(await weighBag(contextOf(c), idParam(c, 'bag'), c.req.valid('json')))),
  )
  .post(
    '/bags/:bag/loss',
    describe(TAG, 'Book grams lost before they were anyone’s', ['not-enough-left', 'bag-on-hold']),
    may(mayHandleBags),
    jsonBody(bagLoss),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => loseFromBag(context, idParam(c, 'bag'), c.req.valid('json')),
        present: presentBag,
      }),
  )
  .post(
    '/bags/:bag/discard',
    describe('Holds', 'Throw away all of a bag on hold, which ends the hold', ['hold-ended']),
    may(mayHandleBags),
    jsonBody(bagDiscard),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => discardBag(context, idParam(c, 'bag'), c.req.valid('json')),
        present: presentBag,
      }),
  );
