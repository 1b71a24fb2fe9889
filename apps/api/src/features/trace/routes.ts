import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, may, queryOf } from '../../platform/http.ts';
import { mayTrace } from './policy.ts';
import { presentTraces, traceRows } from './present.ts';
import { traceQuery } from './schema.ts';
import { drawTraces } from './use-cases.ts';

export const traceRoutes = new Hono<AppEnv>().get(
  '/traces',
  describe('Books', 'Ten bags, containers and entries of money drawn by a seed, each with its whole way'),
  may(mayTrace),
  queryOf(traceQuery),
  async (c) => {
    const { seed, format } = c.req.valid('query');
    const drawn = await drawTraces(contextOf(c), seed);
    return format === 'csv' ? answerCsv(c, 'traces', traceRows(drawn)) : c.json(presentTraces(drawn));
  },
);
