import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { hasKitchen } from './policy.ts';
import { presentKitchen, presentPutBack } from './present.ts';
import { undoTake as undoTakeSchema, useKitchen as useKitchenSchema } from './schema.ts';
import { readKitchen, undoTake, useKitchen } from './use-cases.ts';

const ofHousehold = may(hasKitchen, 'household-needed');
const TAG = 'Containers';

export const kitchenRoutes = new Hono<AppEnv>()
  .get('/kitchen', describe(TAG, 'What is in my kitchen'), ofHousehold, async (c) =>
    c.json(presentKitchen(await readKitchen(contextOf(c)))),
  )
  .post(
    '/kitchen/takes/:entry/undoing',
    describe(TAG, 'Put back what was taken to the kitchen', ['cannot-reverse', 'already-reversed']),
    ofHousehold,
    jsonBody(undoTakeSchema),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => undoTake(context, idParam(c, 'entry'), c.req.valid('json').reason),
        present: presentPutBack,
      }),
  )
  .post(
    '/kitchen/uses',
    describe(TAG, 'Take grams out of my kitchen for good', ['not-enough-left', 'on-hold']),
    ofHousehold,
    jsonBody(useKitchenSchema),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => useKitchen(context, c.req.valid('json')),
        present: (left) => left,
      }),
  );
