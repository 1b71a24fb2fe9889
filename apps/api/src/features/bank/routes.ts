import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayKeepBank, mayReadBank } from './policy.ts';
import {
  lineRows,
  presentEntryAtBank,
  presentFiles,
  presentForecast,
  presentLines,
  presentMatch,
  presentPreview,
  presentReconciliation,
  presentTaken,
} from './present.ts';
import {
  balanceWish,
  filesQuery,
  fileWish,
  forecastQuery,
  linesQuery,
  matchWish,
  postWish,
  previewWish,
  reconciliationQuery,
  setAsideWish,
  undoWish,
} from './schema.ts';
import { readCandidates, readForecast, readLines, readReconciliation } from './use-cases.ts';
import { previewFile, readFiles, sayBalance, takeFile } from './use-cases-file.ts';
import { matchLine, postLine, setLineAside, undoLine } from './use-cases-match.ts';

const matched = { status: 201, present: presentMatch } as const;

export const bankRoutes = new Hono<AppEnv>()
  .post(
    '/bank/previews',
    describe('Bank', 'How a bank’s file would be read, and what it would bring; nothing is changed'),
    may(mayKeepBank),
    jsonBody(previewWish),
    async (c) => c.json(presentPreview(await previewFile(contextOf(c), c.req.valid('json')))),
  )
  .get(
    '/bank/files',
    describe('Bank', 'The bank’s files that were taken in'),
    may(mayReadBank),
    queryOf(filesQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = presentFiles(await readFiles(contextOf(c), query));
      return query.format === 'csv' ? answerCsv(c, 'bank-files', page.files) : c.json(page);
    },
  )
  .post(
    '/bank/files',
    describe('Bank', 'Take in the lines of a bank’s file; those that are there already stay as they are', [
      'nothing-to-post',
    ]),
    may(mayKeepBank),
    jsonBody(fileWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => takeFile(context, c.req.valid('json')),
        present: presentTaken,
      }),
  )
  .post(
    '/bank/balances',
    describe('Bank', 'What the bank’s statement says it held at the end of a day'),
    may(mayKeepBank),
    jsonBody(balanceWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => sayBalance(context, c.req.valid('json')),
        present: ({ onDay, minorUnits }) => ({ onDay, minorUnits }),
      }),
  )
  .get(
    '/bank/lines',
    describe('Bank', 'The bank’s lines: what each became, or what it may be'),
    may(mayReadBank),
    queryOf(linesQuery),
    async (c) => {
      const query = c.req.valid('query');
      const reading = await readLines(contextOf(c), query);
      return query.format === 'csv'
        ? answerCsv(c, 'bank-lines', lineRows(reading))
        : c.json(presentLines(reading));
    },
  )
  .get(
    '/bank/lines/:bankLine/entries',
    describe('Bank', 'The entries of the book that a line could be by its amount'),
    may(mayReadBank),
    async (c) => {
      const entries = await readCandidates(contextOf(c), idParam(c, 'bankLine'));
      return c.json({ entries: entries.map(presentEntryAtBank) });
    },
  )
  .post(
    '/bank/lines/:bankLine/match',
    describe('Bank', 'A line is an entry that the book has already', [
      ...(['line-already-matched', 'entry-already-matched', 'does-not-add-up'] as const),
    ]),
    may(mayKeepBank),
    jsonBody(matchWish),
    (c) =>
      answerOnce(c, {
        ...matched,
        run: (context) => matchLine(context, idParam(c, 'bankLine'), c.req.valid('json')),
      }),
  )
  .post(
    '/bank/lines/:bankLine/posting',
    describe('Bank', 'A line is posted; what may be a second receipt needs a written answer', [
      ...(['line-already-matched', 'second-receipt', 'period-closed', 'not-enough-left'] as const),
    ]),
    may(mayKeepBank),
    jsonBody(postWish),
    (c) =>
      answerOnce(c, {
        ...matched,
        run: (context) => postLine(context, idParam(c, 'bankLine'), c.req.valid('json')),
      }),
  )
  .post(
    '/bank/lines/:bankLine/setting-aside',
    describe('Bank', 'A line is none of the book’s, for a reason', ['line-already-matched']),
    may(mayKeepBank),
    jsonBody(setAsideWish),
    (c) =>
      answerOnce(c, {
        ...matched,
        run: (context) => setLineAside(context, idParam(c, 'bankLine'), c.req.valid('json')),
      }),
  )
  .post(
    '/bank/lines/:bankLine/undoing',
    describe('Bank', 'Let a line go, and take back what it was posted as if that is wished', [
      'cannot-reverse',
    ]),
    may(mayKeepBank),
    jsonBody(undoWish),
    (c) =>
      answerOnce(c, {
        ...matched,
        run: (context) => undoLine(context, idParam(c, 'bankLine'), c.req.valid('json')),
      }),
  )
  .get(
    '/bank/reconciliation',
    describe('Bank', 'Whether the bank agrees with the book, and what is under way between them'),
    may(mayReadBank),
    queryOf(reconciliationQuery),
    async (c) =>
      c.json(presentReconciliation(await readReconciliation(contextOf(c), c.req.valid('query').on))),
  )
  .get(
    '/bank/forecast',
    describe('Bank', 'Whether the bank can pay what is due by a day'),
    may(mayReadBank),
    queryOf(forecastQuery),
    async (c) => c.json(presentForecast(await readForecast(contextOf(c), c.req.valid('query')))),
  );
