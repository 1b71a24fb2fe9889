import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf } from '../../platform/paging.ts';
import { mayKeepInvoices } from './policy.ts';
import { presentInvoice } from './present.ts';
import { invoiceQuery, invoiceVoid, invoiceWish } from './schema.ts';
import { enterInvoice, readInvoices, voidInvoice } from './use-cases.ts';

const TAG = 'Bills and claims';

export const invoiceRoutes = new Hono<AppEnv>()
  .post(
    '/buys/:buy/invoices',
    describe(TAG, 'Enter what a supplier or carrier bills a buy, line by line', [
      'already-there',
      'amount-too-large',
      'buy-stage-wrong',
      'currency-mixed',
      'period-closed',
    ]),
    may(mayKeepInvoices),
    jsonBody(invoiceWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => enterInvoice(context, idParam(c, 'buy'), c.req.valid('json')),
        present: presentInvoice,
      }),
  )
  .get(
    '/buys/:buy/invoices',
    describe(TAG, 'The invoices of a buy, voided ones marked'),
    queryOf(invoiceQuery),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readInvoices(contextOf(c), idParam(c, 'buy'), query);
      const { rows, next } = pageOf(found, query.limit, ({ invoice }) => invoice.invoiceId);
      const invoices = rows.map(presentInvoice);
      if (query.format === 'csv')
        return answerCsv(
          c,
          'invoices',
          invoices.flatMap(({ lines, minorUnits: _, ...facts }) =>
            lines.map((line) => ({ ...facts, ...line })),
          ),
        );
      return c.json({ invoices, next });
    },
  )
  .post(
    '/invoices/:invoice/void',
    describe(TAG, 'Take back an invoice that was entered by mistake', [
      'already-reversed',
      'buy-stage-wrong',
    ]),
    may(mayKeepInvoices),
    jsonBody(invoiceVoid),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => voidInvoice(context, idParam(c, 'invoice'), c.req.valid('json')),
        present: presentInvoice,
      }),
  );
