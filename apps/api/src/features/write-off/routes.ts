import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayAgreeToWriteOff, mayAskWriteOff, mayReadWriteOffs } from './policy.ts';
import { presentWriteOff, presentWriteOffs } from './present.ts';
import { writeOffQuery, writeOffWish } from './schema.ts';
import { agreeToWriteOff, askWriteOff, readWriteOffs, withdrawWriteOff } from './use-cases.ts';

export const writeOffRoutes = new Hono<AppEnv>()
  .get(
    '/write-offs',
    describe('Money', 'Debts written off, or asked to be'),
    may(mayReadWriteOffs),
    queryOf(writeOffQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = presentWriteOffs(await readWriteOffs(contextOf(c), query));
      return query.format === 'csv' ? answerCsv(c, 'write-offs', page.writeOffs) : c.json(page);
    },
  )
  .post(
    '/write-offs',
    describe('Money', 'Write a debt off; above the limit of the rules a second login must agree', [
      'not-enough-left',
      'period-closed',
    ]),
    may(mayAskWriteOff),
    jsonBody(writeOffWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => askWriteOff(context, c.req.valid('json')),
        present: presentWriteOff,
      }),
  )
  .post(
    '/write-offs/:writeOff/agreement',
    describe('Money', 'Agree to a write-off as the second login', ['second-login-needed', 'not-enough-left']),
    may(mayAgreeToWriteOff),
    (c) =>
      answerOnce(c, {
        status: 200,
        run: (context) => agreeToWriteOff(context, idParam(c, 'writeOff')),
        present: presentWriteOff,
      }),
  )
  .post(
    '/write-offs/:writeOff/withdrawal',
    describe('Money', 'Withdraw a write-off that nobody agreed to yet', ['already-there']),
    may(mayAskWriteOff),
    (c) =>
      answerOnce(c, {
        status: 200,
        run: (context) => withdrawWriteOff(context, idParam(c, 'writeOff')),
        present: presentWriteOff,
      }),
  );
