import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayWithdraw } from './policy.ts';
import { presentWithdrawal } from './present.ts';
import { withdrawalWish } from './schema.ts';
import { readWithdrawals, withdraw } from './use-cases.ts';

const TAG = 'Withdrawals';

export const withdrawalRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/withdrawals',
    describe(TAG, 'Who withdrew from a buy: all to the duties that need it, to others their own'),
    async (c) => {
      const withdrawals = await readWithdrawals(contextOf(c), idParam(c, 'buy'));
      return c.json({
        withdrawals: withdrawals.map((withdrawal) => presentWithdrawal(withdrawal, c.var.actor)),
      });
    },
  )
  .post(
    '/buys/:buy/withdrawals',
    describe(TAG, 'Withdraw a household from a buy, until its food is split', [
      'household-needed',
      'not-your-household',
      'buy-stage-wrong',
      'already-there',
      'already-split',
    ]),
    may(mayWithdraw, 'household-needed'),
    jsonBody(withdrawalWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => withdraw(context, idParam(c, 'buy'), c.req.valid('json')),
        present: (withdrawal) => presentWithdrawal(withdrawal, c.var.actor),
      }),
  );
