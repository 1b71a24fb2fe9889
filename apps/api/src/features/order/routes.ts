import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayAgreeToOrder, mayConfirmTerms, mayReopen } from './policy.ts';
import { presentConfirmed, presentConsents, presentOrders, presentReopened } from './present.ts';
import { confirmedTerms, orderConsent, reopening } from './schema.ts';
import { agreeToOrder, confirmTerms, readConsents, readOrders, reopenBuy } from './use-cases.ts';

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
  .put(
    '/buys/:buy/quotes/:quote/confirmed-terms',
    describe(TAG, 'What the supplier asks now that the buy is fixed; agreements to order are given anew', [
      'stale-version',
      'quote-not-valid',
      'buy-stage-wrong',
    ]),
    may(mayConfirmTerms),
    jsonBody(confirmedTerms),
    async (c) => {
      const named = { buyId: idParam(c, 'buy'), quoteId: idParam(c, 'quote') };
      const confirmed = await confirmTerms(contextOf(c), named, c.req.valid('json'));
      return c.json(presentConfirmed(confirmed, c.var.actor));
    },
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
