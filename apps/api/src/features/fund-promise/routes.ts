import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayFulfil, mayPromise, mayReadFund } from './policy.ts';
import { presentFundPromise, presentFundPromises } from './present.ts';
import {
  fulfilment,
  fundPromiseQuery,
  fundPromiseWish,
  promisePayment,
  promiseWithdrawal,
} from './schema.ts';
import { fulfilPromise, payPromise, promiseFund, readFund, withdrawPromise } from './use-cases.ts';

export const fundPromiseRoutes = new Hono<AppEnv>()
  .get(
    '/fund-promises',
    describe('Money', 'What is in the store fund, what is promised out of it and what is free'),
    may(mayReadFund),
    queryOf(fundPromiseQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = presentFundPromises(await readFund(contextOf(c), query));
      return query.format === 'csv' ? answerCsv(c, 'fund-promises', page.promises) : c.json(page);
    },
  )
  .post(
    '/fund-promises',
    describe('Money', 'Promise an amount out of the store fund for a purpose', [
      'not-enough-left',
      'currency-mixed',
    ]),
    may(mayPromise),
    jsonBody(fundPromiseWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => promiseFund(context, c.req.valid('json')),
        present: presentFundPromise,
      }),
  )
  .post(
    '/fund-promises/:fundPromise/payment',
    describe('Money', 'Pay what was promised out of the store fund', [
      'already-there',
      'not-enough-left',
      'period-closed',
      'currency-mixed',
    ]),
    may(mayFulfil),
    jsonBody(promisePayment),
    (c) =>
      answerOnce(c, {
        status: 200,
        run: (context) => payPromise(context, idParam(c, 'fundPromise'), c.req.valid('json')),
        present: presentFundPromise,
      }),
  )
  .post(
    '/fund-promises/:fundPromise/fulfilment',
    describe('Money', 'Name the entry that fulfilled a promise', ['already-there']),
    may(mayFulfil),
    jsonBody(fulfilment),
    (c) =>
      answerOnce(c, {
        status: 200,
        run: (context) => fulfilPromise(context, idParam(c, 'fundPromise'), c.req.valid('json')),
        present: presentFundPromise,
      }),
  )
  .post(
    '/fund-promises/:fundPromise/withdrawal',
    describe('Money', 'Withdraw a promise, with the reason', ['already-there']),
    may(mayPromise),
    jsonBody(promiseWithdrawal),
    (c) =>
      answerOnce(c, {
        status: 200,
        run: (context) => withdrawPromise(context, idParam(c, 'fundPromise'), c.req.valid('json')),
        present: presentFundPromise,
      }),
  );
