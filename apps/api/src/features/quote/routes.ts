import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayCompareQuotes, mayEnterQuotes } from './policy.ts';
import {
  presentComparison,
  presentLineChoice,
  presentQuote,
  presentQuoteCells,
  presentQuotes,
} from './present.ts';
import {
  comparisonQuery,
  quoteChoice,
  quoteQuery,
  quoteReplacement,
  quoteWish,
  quoteWithdrawal,
} from './schema.ts';
import {
  chooseQuote,
  compareQuotesOfBuy,
  enterQuote,
  readQuotes,
  replaceQuote,
  withdrawQuote,
} from './use-cases.ts';

const TAG = 'Quotes';

export const quoteRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/quotes',
    describe(TAG, 'Every quote of a buy with its terms and cautions'),
    queryOf(quoteQuery),
    async (c) => {
      const quotes = await readQuotes(contextOf(c), idParam(c, 'buy'));
      if (c.req.valid('query').format === 'csv') return answerCsv(c, 'quotes', presentQuoteCells(quotes));
      return c.json(presentQuotes(quotes));
    },
  )
  .post(
    '/buys/:buy/quotes',
    describe(TAG, 'Enter a supplier’s quote', [
      'currency-mixed',
      'quote-not-valid',
      'already-there',
      'buy-stage-wrong',
    ]),
    may(mayEnterQuotes),
    jsonBody(quoteWish),
    async (c) =>
      c.json(presentQuote(await enterQuote(contextOf(c), idParam(c, 'buy'), c.req.valid('json'))), 201),
  )
  .put(
    '/buys/:buy/quotes/:quote',
    describe(TAG, 'Replace the terms of a quote', ['stale-version', 'quote-not-valid', 'buy-stage-wrong']),
    may(mayEnterQuotes),
    jsonBody(quoteReplacement),
    async (c) => {
      const named = { buyId: idParam(c, 'buy'), quoteId: idParam(c, 'quote') };
      return c.json(presentQuote(await replaceQuote(contextOf(c), named, c.req.valid('json'))));
    },
  )
  .post(
    '/buys/:buy/quotes/:quote/withdrawal',
    describe(TAG, 'Withdraw a quote', ['stale-version', 'quote-not-valid', 'buy-stage-wrong']),
    may(mayEnterQuotes),
    jsonBody(quoteWithdrawal),
    async (c) => {
      const named = { buyId: idParam(c, 'buy'), quoteId: idParam(c, 'quote') };
      const { version } = c.req.valid('json');
      return c.json(presentQuote(await withdrawQuote(contextOf(c), named, version)));
    },
  )
  .put(
    '/buys/:buy/lines/:line/quote',
    describe(TAG, 'Choose the quote that a line is filled from', ['stale-version', 'quote-not-valid']),
    may(mayEnterQuotes),
    jsonBody(quoteChoice),
    async (c) => {
      const named = { buyId: idParam(c, 'buy'), buyLineId: idParam(c, 'line') };
      return c.json(presentLineChoice(await chooseQuote(contextOf(c), named, c.req.valid('json'))));
    },
  )
  .get(
    '/buys/:buy/comparison',
    describe(TAG, 'Quotes side by side on landed cost, and the cheapest basket'),
    may(mayCompareQuotes),
    queryOf(comparisonQuery),
    async (c) => {
      const { grams } = c.req.valid('query');
      return c.json(presentComparison(await compareQuotesOfBuy(contextOf(c), idParam(c, 'buy'), grams)));
    },
  );
