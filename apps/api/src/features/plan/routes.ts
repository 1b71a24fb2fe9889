import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayHavePlan } from './policy.ts';
import { presentPlan } from './present.ts';
import { planEdit } from './schema.ts';
import { editPlan, readPlan } from './use-cases.ts';

const TAG = 'Eaters and plans';
const REFUSALS = ['household-needed', 'thing-not-found', 'not-your-household'] as const;

export const planRoutes = new Hono<AppEnv>()
  .get(
    '/households/:household/plan',
    describe(TAG, 'How long one’s own household wants to last, and by which need', REFUSALS),
    may(mayHavePlan, 'household-needed'),
    async (c) => c.json(presentPlan(await readPlan(contextOf(c), idParam(c, 'household')))),
  )
  .put(
    '/households/:household/plan',
    describe(TAG, 'Change one’s own household’s plan', [...REFUSALS, 'stale-version']),
    may(mayHavePlan, 'household-needed'),
    jsonBody(planEdit),
    async (c) => {
      const plan = await editPlan(contextOf(c), idParam(c, 'household'), c.req.valid('json'));
      return c.json(presentPlan(plan));
    },
  );
