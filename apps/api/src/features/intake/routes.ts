import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayReadDonors, mayTakeIn } from './policy.ts';
import { presentIntakes, presentTookIn } from './present.ts';
import { donorReadingWish, intakeQuery, intakeWish } from './schema.ts';
import { readDonor, readIntakes, takeIn } from './use-cases.ts';

const TAG = 'Keeping';
const whoTakesIn = may(mayTakeIn, 'household-needed');

export const intakeRoutes = new Hono<AppEnv>()
  .get(
    '/intakes',
    describe(TAG, 'Stock that was given, with what is known of it', ['duty-missing']),
    whoTakesIn,
    queryOf(intakeQuery),
    async (c) => c.json(presentIntakes(await readIntakes(contextOf(c), c.req.valid('query')))),
  )
  .post(
    '/intakes',
    describe(TAG, 'Take in stock that somebody gives, after a short interview', [
      'intake-refused',
      'over-capacity',
    ]),
    whoTakesIn,
    jsonBody(intakeWish),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => takeIn(context, c.req.valid('json')),
        present: presentTookIn,
      }),
  )
  .post(
    '/intakes/:lot/donor-readings',
    describe(TAG, 'Read who gave a lot of common stock, for a purpose that is written down', [
      'thing-not-found',
    ]),
    may(mayReadDonors),
    jsonBody(donorReadingWish),
    async (c) => c.json(await readDonor(contextOf(c), idParam(c, 'lot'), c.req.valid('json').purpose), 201),
  );
