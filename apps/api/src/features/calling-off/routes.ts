import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayCallOff } from './policy.ts';
import { presentCalledOff } from './present.ts';
import { callingOff } from './schema.ts';
import { callOffBuy } from './use-cases.ts';

export const callingOffRoutes = new Hono<AppEnv>().post(
  '/buys/:buy/calling-off',
  describe('Buys', 'Call a buy off before it lands and give every deposit back', [
    'buy-guard-unmet',
    'buy-stage-wrong',
    'in-use',
  ]),
  may(mayCallOff),
  jsonBody(callingOff),
  async (c) => {
    const buyId = idParam(c, 'buy');
    const wish = c.req.valid('json');
    return answerOnce(c, {
      status: 200,
      run: (context) => callOffBuy(context, buyId, wish),
      present: presentCalledOff,
    });
  },
);
