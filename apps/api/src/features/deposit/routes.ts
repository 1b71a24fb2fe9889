import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { hasDeposit, mayWaive } from './policy.ts';
import { presentOwnDeposit, presentWaiver } from './present.ts';
import { depositWaiver } from './schema.ts';
import { readOwnDeposit, waiveDeposit } from './use-cases.ts';

/** Deposits come in and go back at the money routes; here is what each household is asked for. */
export const depositRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/deposits/own',
    describe('Deposits', 'What my household is asked for and has on deposit', ['household-needed']),
    may(hasDeposit, 'household-needed'),
    async (c) => {
      const own = await readOwnDeposit(contextOf(c), idParam(c, 'buy'));
      return c.json(presentOwnDeposit(own, c.var.actor.currency));
    },
  )
  .post(
    '/buys/:buy/deposits/waivers',
    describe('Deposits', 'Let a household off its deposit; the reason stays between the two', [
      'buy-stage-wrong',
      'already-there',
    ]),
    may(mayWaive),
    jsonBody(depositWaiver),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => waiveDeposit(context, idParam(c, 'buy'), c.req.valid('json')),
        present: presentWaiver,
      }),
  );
