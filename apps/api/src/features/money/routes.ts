import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import type { ProblemCode } from '../../platform/problem-catalogue.ts';
import { mayKeepMoney, mayPreviewYearEnd, mayReadDeposits } from './policy.ts';
import { presentDeposits, presentPosted, presentYearEnd } from './present.ts';
import {
  deposit,
  depositRefund,
  fundSpending,
  hardshipCover,
  openingBalance,
  payment,
  plainMoney,
  refund,
  supplierPayment,
  tillMoney,
  yearEndQuery,
  yearEndWish,
} from './schema.ts';
import {
  bankCash,
  chargeBank,
  coverHardship,
  endYear,
  listDeposits,
  openBalance,
  paySupplier,
  previewYearEnd,
  receiveFund,
  receivePayment,
  refundCredit,
  refundDeposit,
  spendFund,
  takeDeposit,
} from './use-cases.ts';

const money = (summary: string, ...refusals: ProblemCode[]) =>
  describe('Money', summary, ['period-closed', 'currency-mixed', ...refusals]);
const posted = { status: 201, present: presentPosted } as const;

export const moneyRoutes = new Hono<AppEnv>()
  .post(
    '/payments',
    money('A household pays, by bank or in cash', 'looks-like-a-duplicate'),
    may(mayKeepMoney),
    jsonBody(payment),
    (c) => answerOnce(c, { ...posted, run: (context) => receivePayment(context, c.req.valid('json')) }),
  )
  .post(
    '/refunds',
    money('A household’s credit is paid out', 'not-enough-left'),
    may(mayKeepMoney),
    jsonBody(refund),
    (c) => answerOnce(c, { ...posted, run: (context) => refundCredit(context, c.req.valid('json')) }),
  )
  .post('/bank-charges', money('The bank takes a charge'), may(mayKeepMoney), jsonBody(plainMoney), (c) =>
    answerOnce(c, { ...posted, run: (context) => chargeBank(context, c.req.valid('json')) }),
  )
  .post(
    '/cash-bankings',
    money('Cash from the tin is paid into the bank', 'not-enough-left'),
    may(mayKeepMoney),
    jsonBody(plainMoney),
    (c) => answerOnce(c, { ...posted, run: (context) => bankCash(context, c.req.valid('json')) }),
  )
  .post(
    '/fund-receipts',
    money('Someone gives the storehouse money'),
    may(mayKeepMoney),
    jsonBody(tillMoney),
    (c) => answerOnce(c, { ...posted, run: (context) => receiveFund(context, c.req.valid('json')) }),
  )
  .post(
    '/fund-spendings',
    money('The storehouse pays for repairs and parts', 'not-enough-left'),
    may(mayKeepMoney),
    jsonBody(fundSpending),
    (c) => answerOnce(c, { ...posted, run: (context) => spendFund(context, c.req.valid('json')) }),
  )
  .post(
    '/hardship-covers',
    money('The store fund covers what a household can’t pay', 'not-enough-left'),
    may(mayKeepMoney),
    jsonBody(hardshipCover),
    (c) => answerOnce(c, { ...posted, run: (context) => coverHardship(context, c.req.valid('json')) }),
  )
  .post(
    '/supplier-payments',
    money('A supplier or a carrier is paid', 'not-enough-left'),
    may(mayKeepMoney),
    jsonBody(supplierPayment),
    (c) => answerOnce(c, { ...posted, run: (context) => paySupplier(context, c.req.valid('json')) }),
  )
  .post(
    '/opening-balances',
    money('A balance is brought over from the book kept before', 'not-enough-left'),
    may(mayKeepMoney),
    jsonBody(openingBalance),
    (c) => answerOnce(c, { ...posted, run: (context) => openBalance(context, c.req.valid('json')) }),
  )
  .post(
    '/year-ends',
    money('Income and expenses through a day are carried into the store fund', 'nothing-to-post'),
    may(mayKeepMoney),
    jsonBody(yearEndWish),
    (c) => answerOnce(c, { ...posted, run: (context) => endYear(context, c.req.valid('json')) }),
  )
  .get(
    '/year-ends/preview',
    describe('Money', 'What the end of a year would carry into the store fund, account by account'),
    may(mayPreviewYearEnd),
    queryOf(yearEndQuery),
    async (c) => c.json(presentYearEnd(await previewYearEnd(contextOf(c), c.req.valid('query').throughOn))),
  )
  .get(
    '/buys/:buy/deposits',
    describe('Money', 'Who has a deposit on a buy; the coordinator sees yes or no'),
    may(mayReadDeposits),
    async (c) => c.json(presentDeposits(await listDeposits(contextOf(c), idParam(c, 'buy')))),
  )
  .post(
    '/buys/:buy/deposits',
    money('A household leaves a deposit on a buy', 'buy-stage-wrong', 'not-enough-left'),
    may(mayKeepMoney),
    jsonBody(deposit),
    (c) =>
      answerOnce(c, {
        ...posted,
        run: (context) => takeDeposit(context, idParam(c, 'buy'), c.req.valid('json')),
      }),
  )
  .post(
    '/buys/:buy/deposits/refunds',
    money('A deposit goes back, also from a buy that ended', 'not-enough-left'),
    may(mayKeepMoney),
    jsonBody(depositRefund),
    (c) =>
      answerOnce(c, {
        ...posted,
        run: (context) => refundDeposit(context, idParam(c, 'buy'), c.req.valid('json')),
      }),
  );
