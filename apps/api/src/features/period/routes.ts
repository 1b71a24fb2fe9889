import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, jsonBody, may } from '../../platform/http.ts';
import { mayClosePeriod } from './policy.ts';
import { presentPeriods } from './present.ts';
import { periodEnd } from './schema.ts';
import { closePeriod, listPeriods } from './use-cases.ts';

export const periodRoutes = new Hono<AppEnv>()
  .get(
    '/periods',
    describe('Books', 'Through which day the books are closed, and who closed them'),
    async (c) => c.json(presentPeriods(await listPeriods(contextOf(c)))),
  )
  .post(
    '/periods',
    describe('Books', 'Close the books through a day; nothing is posted to those days any more', [
      'period-closed',
    ]),
    may(mayClosePeriod),
    jsonBody(periodEnd),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => closePeriod(context, c.req.valid('json')),
        present: presentPeriods,
      }),
  );
