import { readCode } from '@sheafbook/units';
import { Hono, type Context as HonoContext } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, may, queryOf } from '../../platform/http.ts';
import { Problem } from '../../platform/problem.ts';
import {
  mayPrintComparison,
  mayPrintGiftYear,
  mayPrintHandover,
  mayPrintInspections,
  mayPrintLabels,
  mayPrintOffers,
  mayPrintRecall,
  mayPrintRuns,
  mayPrintSeals,
  mayPrintShelf,
  mayPrintWhoOwes,
  mayPrintYearReview,
} from './policy.ts';
import { presentPaper } from './present.ts';
import {
  giftYearPaperQuery,
  labelSheetQuery,
  orderPaperQuery,
  paperQuery,
  recallPaperQuery,
  shelfPaperQuery,
  slipQuery,
  statementPaperQuery,
  transferSlipQuery,
  yearReviewPaperQuery,
} from './schema.ts';
import {
  type PrintedPaper,
  printBuySheet,
  printClaimLetter,
  printDoubtTag,
  printEatFirstList,
  printGiftManifest,
  printGiftYear,
  printHandover,
  printHoldTag,
  printInspectionSheet,
  printLandingSheet,
  printLoanSlip,
  printMonth,
  printOfferNotice,
  printOrder,
  printPledgeSlip,
  printQuoteComparison,
  printRecallNotice,
  printRunSheet,
  printSeamLog,
  printShelfList,
  printSplitSheet,
  printStatement,
  printTransferSlip,
  printWhoOwes,
  printYearReview,
  readPaper,
} from './use-cases.ts';
import { printLabels, printLabelsAhead } from './use-cases-labels.ts';

const TAG = 'Papers';
const LABELS_PDF = {
  'Content-Type': 'application/pdf',
  'Content-Disposition': 'inline; filename="labels.pdf"',
};

export const paperRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/papers/buy-sheet',
    describe(TAG, 'The sheet of a buy for the wall, as PDF'),
    queryOf(paperQuery),
    async (c) => answerPdf(c, await printBuySheet(contextOf(c), ofBuy(c), c.req.valid('query'))),
  )
  .get(
    '/buys/:buy/papers/pledge-slip',
    describe(TAG, 'A pledge slip as PDF: filled as pledged, or empty for a pen', ['not-your-household']),
    queryOf(slipQuery),
    async (c) => answerPdf(c, await printPledgeSlip(contextOf(c), ofBuy(c), c.req.valid('query'))),
  )
  .get(
    '/buys/:buy/papers/quote-comparison',
    describe(TAG, 'Quotes side by side on landed cost, as PDF'),
    may(mayPrintComparison),
    queryOf(paperQuery),
    async (c) => answerPdf(c, await printQuoteComparison(contextOf(c), ofBuy(c), c.req.valid('query'))),
  )
  .get(
    '/buys/:buy/papers/order',
    describe(TAG, 'An order to a supplier as PDF'),
    queryOf(orderPaperQuery),
    async (c) => answerPdf(c, await printOrder(contextOf(c), ofBuy(c), c.req.valid('query'))),
  )
  .get(
    '/buys/:buy/papers/landing-sheet',
    describe(TAG, 'The landing sheet as PDF, with room for a pen where nothing has come yet'),
    queryOf(paperQuery),
    async (c) => answerPdf(c, await printLandingSheet(contextOf(c), ofBuy(c), c.req.valid('query'))),
  )
  .get(
    '/splits/:split/paper',
    describe(TAG, 'The split sheet as PDF, by seats; a member finds their own row'),
    queryOf(paperQuery),
    async (c) => {
      const of = { splitId: idParam(c, 'split'), origin: originOf(c) };
      return answerPdf(c, await printSplitSheet(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/claims/:claim/paper',
    describe(TAG, 'The letter of a claim to its supplier as PDF'),
    queryOf(paperQuery),
    async (c) => {
      const of = { claimId: idParam(c, 'claim'), origin: originOf(c) };
      return answerPdf(c, await printClaimLetter(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/households/:household/statement/paper',
    describe(TAG, 'A household’s statement as PDF', ['not-your-household']),
    queryOf(statementPaperQuery),
    async (c) => {
      const of = { householdId: idParam(c, 'household'), origin: originOf(c) };
      return answerPdf(c, await printStatement(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/households/:household/month/paper',
    describe(TAG, 'A household’s month on one page as PDF; printed by a coordinator it holds no amount', [
      'not-your-household',
    ]),
    queryOf(paperQuery),
    async (c) => {
      const of = { householdId: idParam(c, 'household'), origin: originOf(c) };
      return answerPdf(c, await printMonth(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/shelf/papers/list',
    describe(TAG, 'What stands where, with a column to count, as PDF', ['duty-missing']),
    may(mayPrintShelf, 'household-needed'),
    queryOf(shelfPaperQuery),
    async (c) =>
      answerPdf(c, await printShelfList(contextOf(c), { origin: originOf(c) }, c.req.valid('query'))),
  )
  .get(
    '/shelf/papers/eat-first',
    describe(TAG, 'What is eaten first, in order, as PDF', ['duty-missing']),
    may(mayPrintShelf, 'household-needed'),
    queryOf(shelfPaperQuery),
    async (c) =>
      answerPdf(c, await printEatFirstList(contextOf(c), { origin: originOf(c) }, c.req.valid('query'))),
  )
  .get(
    '/inspections/papers/sheet',
    describe(TAG, 'What is to be looked at by today, with each finding of a look to tick, as PDF', [
      'duty-missing',
    ]),
    may(mayPrintInspections, 'household-needed'),
    queryOf(shelfPaperQuery),
    async (c) =>
      answerPdf(c, await printInspectionSheet(contextOf(c), { origin: originOf(c) }, c.req.valid('query'))),
  )
  .get(
    '/balances/paper',
    describe(TAG, 'The treasurer’s list of who owes as PDF'),
    may(mayPrintWhoOwes),
    queryOf(paperQuery),
    async (c) => {
      const of = { origin: originOf(c) };
      return answerPdf(c, await printWhoOwes(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/packing-sessions/:session/papers/run-sheet',
    describe(TAG, 'The run sheet of a packing day as PDF'),
    may(mayPrintRuns),
    queryOf(paperQuery),
    async (c) => {
      const of = { sessionId: idParam(c, 'session'), origin: originOf(c) };
      return answerPdf(c, await printRunSheet(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/packing-sessions/:session/papers/seam-log',
    describe(TAG, 'The seam log of a packing day as PDF, beside what the makers of its cans allow', [
      'seam-limits-missing',
    ]),
    may(mayPrintSeals),
    queryOf(paperQuery),
    async (c) => {
      const of = { sessionId: idParam(c, 'session'), origin: originOf(c) };
      return answerPdf(c, await printSeamLog(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/seal-checks/:check/tag',
    describe(TAG, 'The tag for what a failed check put in doubt, as PDF', ['thing-not-found']),
    may(mayPrintSeals),
    queryOf(paperQuery),
    async (c) => {
      const of = { checkId: idParam(c, 'check'), origin: originOf(c) };
      return answerPdf(c, await printDoubtTag(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/holds/:hold/tag',
    describe(TAG, 'The tag for what is on hold, as PDF', ['thing-not-found']),
    queryOf(paperQuery),
    async (c) => {
      const of = { holdId: idParam(c, 'hold'), origin: originOf(c) };
      return answerPdf(c, await printHoldTag(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/holds/:hold/papers/recall-notice',
    describe(TAG, 'A recall notice for one household or one pantry, with a slip to give back, as PDF', [
      'not-your-household',
      'thing-not-found',
      'hold-ended',
    ]),
    may(mayPrintRecall, 'household-needed'),
    queryOf(recallPaperQuery),
    async (c) => {
      const of = { holdId: idParam(c, 'hold'), origin: originOf(c) };
      return answerPdf(c, await printRecallNotice(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/loans/:loan/paper',
    describe(TAG, 'The slip of a loan as PDF, its parts to be ticked', ['not-your-household']),
    queryOf(paperQuery),
    async (c) => {
      const of = { loanId: idParam(c, 'loan'), origin: originOf(c) };
      return answerPdf(c, await printLoanSlip(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/gift-manifests/:manifest/paper',
    describe(TAG, 'The manifest of a gift with its receipt as PDF', ['thing-not-found']),
    queryOf(paperQuery),
    async (c) => {
      const of = { manifestId: idParam(c, 'manifest'), origin: originOf(c) };
      return answerPdf(c, await printGiftManifest(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/gift-year/paper',
    describe(TAG, 'What pantries accepted of my household in a year, as PDF'),
    may(mayPrintGiftYear, 'household-needed'),
    queryOf(giftYearPaperQuery),
    async (c) => {
      const of = { origin: originOf(c) };
      return answerPdf(c, await printGiftYear(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/handover/paper',
    describe(TAG, 'The pack that a duty is handed over with as PDF; amounts for the treasurer'),
    may(mayPrintHandover),
    queryOf(paperQuery),
    async (c) => {
      const of = { origin: originOf(c) };
      return answerPdf(c, await printHandover(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/year-review/paper',
    describe(TAG, 'A year as those read it who sign it, as PDF: figures, invariants, traces, exceptions'),
    may(mayPrintYearReview),
    queryOf(yearReviewPaperQuery),
    async (c) => {
      const of = { origin: originOf(c) };
      return answerPdf(c, await printYearReview(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/offers/:offer/papers/notice',
    describe(TAG, 'What is offered and until when as PDF', ['thing-not-found', 'offer-over']),
    may(mayPrintOffers, 'household-needed'),
    queryOf(paperQuery),
    async (c) => {
      const of = { offerId: idParam(c, 'offer'), origin: originOf(c) };
      return answerPdf(c, await printOfferNotice(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/offers/:offer/papers/transfer-slip',
    describe(TAG, 'What changed hands at one taking as PDF, for giver and taker', ['thing-not-found']),
    may(mayPrintOffers, 'household-needed'),
    queryOf(transferSlipQuery),
    async (c) => {
      const of = { offerId: idParam(c, 'offer'), origin: originOf(c) };
      return answerPdf(c, await printTransferSlip(contextOf(c), of, c.req.valid('query')));
    },
  )
  .get(
    '/labels/paper',
    describe(TAG, 'Labels of my containers as PDF, on a common sheet of stickers from any sticker on', [
      'thing-not-found',
      'nothing-to-label',
    ]),
    may(mayPrintLabels, 'household-needed'),
    queryOf(labelSheetQuery),
    async (c) => {
      const bytes = await printLabels(contextOf(c), c.req.valid('query'));
      return c.body(bytes, 200, LABELS_PDF);
    },
  )
  .get(
    '/packing-sessions/:session/labels/paper',
    describe(TAG, 'Labels made ahead of a session as PDF, their net mass to be written by pen', [
      'thing-not-found',
      'nothing-to-label',
    ]),
    may(mayPrintRuns),
    queryOf(labelSheetQuery),
    async (c) => {
      const query = c.req.valid('query');
      const bytes = await printLabelsAhead(contextOf(c), idParam(c, 'session'), query);
      return c.body(bytes, 200, LABELS_PDF);
    },
  )
  .get(
    '/papers/:paper',
    describe(TAG, 'What the code on a paper leads back to', ['thing-not-found', 'not-your-household']),
    async (c) => {
      const code = readCode(c.req.param('paper'));
      if (!code) throw new Problem('thing-not-found', { thing: 'paper' });
      return c.json(presentPaper(await readPaper(contextOf(c), code)));
    },
  );

const ofBuy = (c: HonoContext<AppEnv>) => ({ buyId: idParam(c, 'buy'), origin: originOf(c) });

/** The server's public address, or the one that the browser reached it at. */
const originOf = (c: HonoContext<AppEnv>): string =>
  c.var.config.isPublicUrlSet ? c.var.config.publicUrl.replace(/\/$/, '') : new URL(c.req.url).origin;

/** Opens in the browser; saved, it is named by its kind and code. */
function answerPdf(c: HonoContext<AppEnv>, { bytes, kind, code }: PrintedPaper) {
  return c.body(bytes, 200, {
    'Content-Type': 'application/pdf',
    'Content-Disposition': `inline; filename="${kind}-${code}.pdf"`,
  });
}
