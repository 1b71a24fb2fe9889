import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayAgreeToOrder, mayReopen } from './policy.ts';
import { presentConsents, presentOrders, presentReopened } from './present.ts';
import { orderConsent, reopening } from './schema.ts';
import { agreeToOrder, readConsents, readOrders, reopenBuy } from './use-cases.ts';

const TAG = 'Orders';

export const orderRoutes = new Hono<AppEnv>()
  .get('/buys/:buy/order-consents', describe(TAG, 'Who has agreed to order so far'), async (c) =>
    c.json(presentConsents(await readConsents(contextOf(c), idParam(c, 'buy')))),
  )
  .post(
    '/buys/:buy/order-consents',
    describe(TAG, 'Agree to order, as coordinator or as treasurer; the second of the two people orders', [
      'second-login-needed',
      'already-there',
      'buy-stage-wrong',
      'buy-guard-unmet',
    ]),
    may(mayAgreeToOrder),
    jsonBody(orderConsent),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => agreeToOrder(context, idParam(c, 'buy'), c.req.valid('json')),
        present: presentConsents,
      }),
  )
  .get('/buys/:buy/orders', describe(TAG, 'The orders to the suppliers'), async (c) =>
    c.json(presentOrders(await readOrders(contextOf(c), idParam(c, 'buy')), c.var.actor)),
  )
  .post(
    '/buys/:buy/reopening',
    describe(TAG, 'Open a fixed buy for pledges again; deposits stay held', [
      'buy-stage-wrong',
      'buy-guard-unmet',
    ]),
    may(mayReopen),
    jsonBody(reopening),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => reopenBuy(context, idParam(c, 'buy'), c.req.valid('json')),
        present: presentReopened,
      }),
  );
