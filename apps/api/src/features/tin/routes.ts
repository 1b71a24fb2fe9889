import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayCountTin, mayReadTin } from './policy.ts';
import { countRows, presentCount, presentCounts, presentTin } from './present.ts';
import { countsQuery, countWish } from './schema.ts';
import { countTin, readCounts, readTin } from './use-cases.ts';

export const tinRoutes = new Hono<AppEnv>()
  .get('/tin', describe('Bank', 'What the book says is in the cash tin'), may(mayReadTin), async (c) =>
    c.json(presentTin(await readTin(contextOf(c)))),
  )
  .get(
    '/tin/counts',
    describe('Bank', 'Counts of the cash tin, the newest first'),
    may(mayReadTin),
    queryOf(countsQuery),
    async (c) => {
      const query = c.req.valid('query');
      const reading = await readCounts(contextOf(c), query);
      return query.format === 'csv'
        ? answerCsv(c, 'tin-counts', countRows(reading))
        : c.json(presentCounts(reading));
    },
  )
  .post(
    '/tin/counts',
    describe('Bank', 'Count the cash tin; a difference is posted with its reason', [
      ...(['stale-version', 'does-not-add-up', 'period-closed'] as const),
    ]),
    may(mayCountTin),
    jsonBody(countWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => countTin(context, c.req.valid('json')),
        present: presentCount,
      }),
  );
