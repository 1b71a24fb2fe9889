import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, may, queryOf } from '../../platform/http.ts';
import { mayTrace } from './policy.ts';
import { presentTraces, traceRows } from './present.ts';
import { presentWayOf } from './present-way.ts';
import { traceQuery, wayQuery } from './schema.ts';
import { drawTraces } from './use-cases.ts';
import { traceCode } from './use-cases-way.ts';

export const traceRoutes = new Hono<AppEnv>()
  .get(
    '/traces',
    describe('Books', 'Ten bags, containers and entries of money drawn by a seed, each with its whole way'),
    may(mayTrace),
    queryOf(traceQuery),
    async (c) => {
      const { seed, format } = c.req.valid('query');
      const drawn = await drawTraces(contextOf(c), seed);
      return format === 'csv' ? answerCsv(c, 'traces', traceRows(drawn)) : c.json(presentTraces(drawn));
    },
  )
  .get(
    '/trace',
    describe('Holds', 'What a code names and its way, from the supplier to where each gram is or went', [
      'thing-not-found',
    ]),
    queryOf(wayQuery),
    async (c) => c.json(presentWayOf(await traceCode(contextOf(c), c.req.valid('query')))),
  );
