import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, may, queryOf } from '../../platform/http.ts';
import { pageOf } from '../../platform/paging.ts';
import { mayReadOwnLog, mayReviewLooks } from './policy.ts';
import { asSaid, presentLooks, presentMonthOfLooks, presentPrivateRead } from './present.ts';
import { looksPage, reviewQuery } from './schema.ts';
import { readPrivateReads, reviewLooks, reviewMonthsOfLooks } from './use-cases.ts';

const TAG = 'Privacy';

export const privateReadRoutes = new Hono<AppEnv>()
  .get(
    '/households/:household/private-reads',
    describe(TAG, 'Who looked at one’s own household’s private things, newest first', [
      'household-needed',
      'thing-not-found',
      'not-your-household',
    ]),
    may(mayReadOwnLog, 'household-needed'),
    queryOf(looksPage),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readPrivateReads(contextOf(c), idParam(c, 'household'), query);
      const { rows, next } = pageOf(found, query.limit, (row) => row.read.privateReadId);
      const privateReads = rows.map(presentPrivateRead);
      return query.format === 'csv'
        ? answerCsv(c, 'private-reads', privateReads)
        : c.json({ privateReads: privateReads.map(asSaid), next });
    },
  )
  .get(
    '/private-reads',
    describe(TAG, 'How often each duty looked into other households’ things, and why'),
    may(mayReviewLooks),
    queryOf(reviewQuery),
    async (c) => {
      const query = c.req.valid('query');
      const looks = (await reviewLooks(contextOf(c), query)).map(presentLooks);
      return query.format === 'csv' ? answerCsv(c, 'looks', looks) : c.json({ looks });
    },
  )
  .get(
    '/private-reads/months',
    describe(TAG, 'Who looked into other households’ things in each month, how often and what for'),
    may(mayReviewLooks),
    queryOf(reviewQuery),
    async (c) => {
      const { format, ...span } = c.req.valid('query');
      const months = (await reviewMonthsOfLooks(contextOf(c), span)).map(presentMonthOfLooks);
      return format === 'csv'
        ? answerCsv(c, 'looks-by-month', months)
        : c.json({ months: months.map(asSaid) });
    },
  );
