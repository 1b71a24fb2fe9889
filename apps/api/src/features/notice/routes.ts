import { Hono } from 'hono';
import { z } from 'zod';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf, pageQuery } from '../../platform/paging.ts';
import { maySeeReach, mayWriteNotices } from './policy.ts';
import { presentNotice, presentReach, presentReading, presentTold, presentWritten } from './present.ts';
import { noticeQuery, noticeReadingWish, noticeWish } from './schema.ts';
import {
  readNotice,
  readNotices,
  readReach,
  readUnread,
  readWritten,
  tell,
  withdrawNotice,
} from './use-cases.ts';

const TAG = 'Notices';

export const noticeRoutes = new Hono<AppEnv>()
  .get(
    '/notices',
    describe(TAG, 'What I was told, newest first; all, unread or not acknowledged, and by words in it'),
    queryOf(noticeQuery),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readNotices(contextOf(c), query);
      const { rows, next } = pageOf(found, query.limit, ({ notice }) => notice.noticeId);
      const notices = rows.map(presentNotice);
      return query.format === 'csv' ? answerCsv(c, 'notices', notices) : c.json({ notices, next });
    },
  )
  .get(
    '/notices/unread',
    describe(TAG, 'How many I have not read, and how many about safety wait'),
    async (c) => c.json(await readUnread(contextOf(c))),
  )
  .post(
    '/notices',
    describe(TAG, 'Tell everyone, a duty, a household or those who pledged in a buy', ['thing-not-found']),
    may(mayWriteNotices),
    jsonBody(noticeWish),
    async (c) => c.json(presentTold(await tell(contextOf(c), c.req.valid('json'))), 201),
  )
  .get(
    '/notices/written',
    describe(TAG, 'What was written and what was told about safety, with how far it has come'),
    may(maySeeReach),
    queryOf(pageQuery.extend({ after: z.uuid().optional() })),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readWritten(contextOf(c), query);
      const { rows, next } = pageOf(found, query.limit, ({ notice }) => notice.noticeId);
      const notices = rows.map(presentWritten);
      return query.format === 'csv' ? answerCsv(c, 'notices-written', notices) : c.json({ notices, next });
    },
  )
  .get(
    '/notices/:notice/reach',
    describe(TAG, 'Which households have acknowledged a notice', ['thing-not-found']),
    may(maySeeReach),
    async (c) => c.json(presentReach(await readReach(contextOf(c), idParam(c, 'notice')))),
  )
  .put(
    '/notices/:notice/reading',
    describe(TAG, 'Read a notice, or acknowledge it', ['thing-not-found']),
    jsonBody(noticeReadingWish),
    async (c) =>
      c.json(presentReading(await readNotice(contextOf(c), idParam(c, 'notice'), c.req.valid('json')))),
  )
  .delete(
    '/notices/:notice',
    describe(TAG, 'Take back a notice that was written by mistake', ['thing-not-found', 'in-use']),
    may(mayWriteNotices),
    async (c) => {
      await withdrawNotice(contextOf(c), idParam(c, 'notice'));
      return c.body(null, 204);
    },
  );
