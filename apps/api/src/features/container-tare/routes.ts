import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, jsonBody, may } from '../../platform/http.ts';
import { mayWeighTare } from './policy.ts';
import { presentTares } from './present.ts';
import { tareWish } from './schema.ts';
import { readTares, weighTare } from './use-cases.ts';

const TAG = 'Packing sessions';

export const containerTareRoutes = new Hono<AppEnv>()
  .get('/container-tares', describe(TAG, 'What ten empties of each kind weighed last'), async (c) =>
    c.json(presentTares(await readTares(contextOf(c)))),
  )
  .post(
    '/container-tares',
    describe(TAG, 'Write down what ten empty containers of a kind weigh', ['thing-not-found']),
    may(mayWeighTare),
    jsonBody(tareWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => weighTare(context, c.req.valid('json')),
        present: presentTares,
      }),
  );
