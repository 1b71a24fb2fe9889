import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayWishContainers } from './policy.ts';
import { presentPlan } from './present.ts';
import { wishes } from './schema.ts';
import { changeWishes, readContainerPlan } from './use-cases.ts';

const TAG = 'Containers';
const PATH = '/buys/:buy/lines/:line/container-wishes';

export const containerWishRoutes = new Hono<AppEnv>()
  .get(
    PATH,
    describe(TAG, 'What I want my share in, and what that comes to'),
    may(mayWishContainers, 'household-needed'),
    async (c) => {
      const line = { buyId: idParam(c, 'buy'), buyLineId: idParam(c, 'line') };
      return c.json(presentPlan(await readContainerPlan(contextOf(c), line)));
    },
  )
  .put(
    PATH,
    describe(TAG, 'Say what I want my share in', ['buy-stage-wrong']),
    may(mayWishContainers, 'household-needed'),
    jsonBody(wishes),
    async (c) => {
      const line = { buyId: idParam(c, 'buy'), buyLineId: idParam(c, 'line') };
      return c.json(presentPlan(await changeWishes(contextOf(c), line, c.req.valid('json'))));
    },
  );
