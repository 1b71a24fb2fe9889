import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayClosePeriod, mayReadDigest, maySign } from './policy.ts';
import { accountRow, presentDigest, presentPeriods, presentPreview } from './present.ts';
import { closeDay, digestQuery, periodEnd, signatureWish } from './schema.ts';
import {
  closePeriod,
  listPeriods,
  previewClose,
  readDigest,
  readDigestAccounts,
  signPeriod,
} from './use-cases.ts';

export const periodRoutes = new Hono<AppEnv>()
  .get(
    '/periods',
    describe('Books', 'Through which day the books are closed, who closed them, and who signed'),
    async (c) => c.json(presentPeriods(await listPeriods(contextOf(c)))),
  )
  .post(
    '/periods',
    describe('Books', 'Close the books through a day; nothing is posted to those days any more', [
      'period-closed',
      'period-unsettled',
    ]),
    may(mayClosePeriod),
    jsonBody(periodEnd),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => closePeriod(context, c.req.valid('json')),
        present: presentPeriods,
      }),
  )
  .get(
    '/periods/preview',
    describe('Books', 'What a close through a day would leave open, and what of it the close refuses'),
    may(mayReadDigest),
    queryOf(periodEnd),
    async (c) => c.json(presentPreview(await previewClose(contextOf(c), c.req.valid('query').throughOn))),
  )
  .get(
    '/periods/:throughOn/digest',
    describe(
      'Books',
      'The digest of a close and whether it still holds; as text, what it is reckoned from; the kinds of its accounts',
    ),
    may(mayReadDigest),
    queryOf(digestQuery),
    async (c) => {
      const throughOn = closeDay(c.req.param('throughOn'));
      if (c.req.valid('query').format === 'accounts') {
        const accounts = await readDigestAccounts(contextOf(c), throughOn);
        return answerCsv(c, `accounts-through-${throughOn}`, accounts.map(accountRow));
      }
      const digest = await readDigest(contextOf(c), throughOn);
      if (c.req.valid('query').format === 'json') return c.json(presentDigest(digest));
      const name = `book-through-${digest.close.closedThrough}.txt`;
      return c.body(digest.text, 200, {
        'Content-Type': 'text/plain; charset=utf-8',
        'Content-Disposition': `attachment; filename="${name}"`,
      });
    },
  )
  .post(
    '/periods/:throughOn/signatures',
    describe('Books', 'Sign what was closed, under one duty, with remarks', ['cannot-sign', 'already-there']),
    may(maySign),
    jsonBody(signatureWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => signPeriod(context, closeDay(c.req.param('throughOn')), c.req.valid('json')),
        present: presentPeriods,
      }),
  );
