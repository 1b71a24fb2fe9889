import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, queryOf } from '../../platform/http.ts';
import { presentNextStep, presentNextSteps } from './present.ts';
import { nextStepsQuery } from './schema.ts';
import { listNextSteps, readNextStep } from './use-cases.ts';

const TAG = 'Next steps';

export const nextStepRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/next',
    describe(TAG, 'Which stage a buy is at, what blocks the next, and who moves it on by which command'),
    async (c) => c.json(presentNextStep(await readNextStep(contextOf(c), idParam(c, 'buy')))),
  )
  .get(
    '/next-steps',
    describe(TAG, 'What needs me, by deadline and then by the money at stake'),
    queryOf(nextStepsQuery),
    async (c) => {
      const steps = presentNextSteps(await listNextSteps(contextOf(c)));
      if (c.req.valid('query').format === 'csv') return answerCsv(c, 'next-steps', steps.items);
      return c.json(steps);
    },
  );
