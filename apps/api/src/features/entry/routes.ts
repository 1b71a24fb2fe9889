import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayReadEntries, mayReverse } from './policy.ts';
import { entryRows, presentEntries, presentEntry } from './present.ts';
import { entriesQuery, reversalWish } from './schema.ts';
import { readEntries, readEntry, reverse } from './use-cases.ts';

export const entryRoutes = new Hono<AppEnv>()
  .get(
    '/entries',
    describe('Books', 'The book in the order it was written, of all, of one buy or of one household'),
    may(mayReadEntries),
    queryOf(entriesQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = await readEntries(contextOf(c), query);
      return query.format === 'csv' ? answerCsv(c, 'entries', entryRows(page)) : c.json(presentEntries(page));
    },
  )
  .get(
    '/entries/:entry',
    describe('Books', 'One entry with its movements in words'),
    may(mayReadEntries),
    async (c) => c.json(presentEntry(await readEntry(contextOf(c), idParam(c, 'entry')))),
  )
  .post(
    '/entries/:entry/reversal',
    describe('Books', 'Undo an entry by its opposite', [
      'already-reversed',
      'cannot-reverse',
      'period-closed',
    ]),
    may(mayReverse),
    jsonBody(reversalWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => reverse(context, idParam(c, 'entry'), c.req.valid('json')),
        present: presentEntry,
      }),
  );
