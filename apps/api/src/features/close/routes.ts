import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, may } from '../../platform/http.ts';
import { mayClose, mayReadClosing } from './policy.ts';
import { presentClosing } from './present.ts';
import { closeBuy, readClosing } from './use-cases.ts';

const TAG = 'Closing';

export const closeRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/closing',
    describe(TAG, 'Exactly what keeps a buy from closing'),
    may(mayReadClosing),
    async (c) => c.json(presentClosing(await readClosing(contextOf(c), idParam(c, 'buy')))),
  )
  .post(
    '/buys/:buy/closing',
    describe(TAG, 'Close a buy for good, at 0.00 and with no gram left over', [
      'buy-stage-wrong',
      'buy-guard-unmet',
    ]),
    may(mayClose),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => closeBuy(context, idParam(c, 'buy')),
        present: presentClosing,
      }),
  );
