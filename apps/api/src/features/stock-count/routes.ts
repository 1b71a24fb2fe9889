import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf } from '../../platform/paging.ts';
import { listFormat } from '../trial-balance/schema.ts';
import { mayBookCount, mayCount, maySeeCounts } from './policy.ts';
import { commonStockRows, presentCommonStock, presentCount } from './present.ts';
import { countBooking, stockCountQuery, stockCountWish } from './schema.ts';
import { bookCount, countStock, readCommonStock, readCounts } from './use-cases.ts';

export const stockCountRoutes = new Hono<AppEnv>()
  .get(
    '/common-stock',
    describe('Books', 'Common stock as the book has it, with the last count of each bag and container'),
    may(maySeeCounts),
    queryOf(listFormat),
    async (c) => {
      const reading = await readCommonStock(contextOf(c));
      return c.req.valid('query').format === 'csv'
        ? answerCsv(c, 'common-stock', commonStockRows(reading))
        : c.json(presentCommonStock(reading));
    },
  )
  .get(
    '/stock-counts',
    describe('Books', 'Counts of common stock, the newest first'),
    may(maySeeCounts),
    queryOf(stockCountQuery),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readCounts(contextOf(c), query);
      const { rows, next } = pageOf(found, query.limit, ({ count }) => count.stockCountId);
      const counts = rows.map(({ count, countedBy }) => ({ ...presentCount(count), countedBy }));
      return query.format === 'csv' ? answerCsv(c, 'stock-counts', counts) : c.json({ counts, next });
    },
  )
  .post(
    '/stock-counts',
    describe('Books', 'Write down a count of common stock; nothing is posted by it', ['thing-not-found']),
    may(mayCount),
    jsonBody(stockCountWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => countStock(context, c.req.valid('json')),
        present: presentCount,
      }),
  )
  .post(
    '/stock-counts/:count/booking',
    describe('Books', 'Book the difference that a count found, with a reason', [
      'already-there',
      'nothing-to-post',
      'stale-version',
    ]),
    may(mayBookCount),
    jsonBody(countBooking),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => bookCount(context, idParam(c, 'count'), c.req.valid('json')),
        present: presentCount,
      }),
  );
