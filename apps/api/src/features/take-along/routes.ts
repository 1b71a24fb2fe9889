import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, may, queryOf } from '../../platform/http.ts';
import { mayTakeAlong } from './policy.ts';
import { presentCells, presentTaken } from './present.ts';
import { takeAlongQuery } from './schema.ts';
import { takeAlong } from './use-cases.ts';

export const takeAlongRoutes = new Hono<AppEnv>().get(
  '/households/:household/take-along',
  describe(
    'Joining and leaving',
    'All that the book knows of one’s own household, as JSON or table by table',
    ['household-needed', 'thing-not-found', 'not-your-household'],
  ),
  may(mayTakeAlong, 'household-needed'),
  queryOf(takeAlongQuery),
  async (c) => {
    const { table } = c.req.valid('query');
    const taken = await takeAlong(contextOf(c), idParam(c, 'household'));
    if (table === undefined) return c.json(presentTaken(taken));
    return answerCsv(c, table, taken.tables[table].map(presentCells));
  },
);
