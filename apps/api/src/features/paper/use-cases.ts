import type { Tx } from '@sheafbook/db';
import type { PaperRow } from '@sheafbook/db/tables';
import { codeFromNumber, dayInZone } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { Problem } from '../../platform/problem.ts';
import { whoseStock } from '../../platform/whose-stock.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadHeldDeposit } from '../deposit/use-cases.ts';
import { loadUnit } from '../equipment/queries.ts';
import { takeNumber } from '../household/queries.ts';
import { loadLoan } from '../loan/queries.ts';
import { readOfferInside } from '../offer/use-cases.ts';
import { findCheck } from '../seam/queries.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import { makeBuySheet } from './content/buy-sheet.ts';
import { makeClaimLetter } from './content/claim-letter.ts';
import { makeGiftManifest } from './content/gift-manifest.ts';
import { makeGiftYear } from './content/gift-year.ts';
import { makeHandover } from './content/handover.ts';
import { makeInspectionSheet } from './content/inspection-sheet.ts';
import { makeLandingSheet } from './content/landing-sheet.ts';
import { makeLoanSlip } from './content/loan-slip.ts';
import type { Desk, MadePaper } from './content/making.ts';
import { makeMonth } from './content/month.ts';
import { makeOfferNotice, makeTransferSlip } from './content/offer-papers.ts';
import { makeOrder } from './content/order.ts';
import { makePledgeSlip } from './content/pledge-slip.ts';
import { makeDoubtTag, makeHoldTag } from './content/quarantine-tag.ts';
import { makeQuoteComparison } from './content/quote-comparison.ts';
import { makeRecallNotice } from './content/recall-notice.ts';
import { makeRunSheet } from './content/run-sheet.ts';
import { makeSeamLog } from './content/seam-log.ts';
import { makeEatFirstList, makeShelfList } from './content/shelf-lists.ts';
import { makeSplitSheet } from './content/split-sheet.ts';
import { type AskedDeposit, makeStatement } from './content/statement.ts';
import { makeWhoOwes } from './content/who-owes.ts';
import { makeYearReview } from './content/year-review.ts';
import { formatsOf } from './formats.ts';
import { drawPaper } from './layout/draw-paper.ts';
import { isOfOffer, mayFollowCode, mayPrintCommonShelf } from './policy.ts';
import {
  findPrinting,
  insertPaper,
  listAskedDeposits,
  loadLastEntryNo,
  loadPaperByCode,
  type Printing,
} from './queries.ts';
import type {
  GiftYearPaperQuery,
  OrderPaperQuery,
  PaperQuery,
  RecallPaperQuery,
  ShelfPaperQuery,
  SlipQuery,
  StatementPaperQuery,
  TransferSlipQuery,
  YearReviewPaperQuery,
} from './schema.ts';

export type PrintedPaper = {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly kind: string;
  readonly code: string;
};

/** Where members reach the server; the QR of every paper leads there. */
type At = { readonly origin: string };

/** Characters of a paper's code before its check: fewer than a bag's and a container's, so that none is ever shared. */
const PAPER_CODE_CHARACTERS = 4;

type OfBuy = { readonly buyId: string } & At;

export function printBuySheet(context: Context, of: OfBuy, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeBuySheet(desk, of.buyId) });
}

export function printPledgeSlip(context: Context, of: OfBuy, query: SlipQuery) {
  const wish = { buyId: of.buyId, householdId: query.household, isBlank: query.blank };
  return print(context, { query, ...of, make: (desk) => makePledgeSlip(desk, wish) });
}

export function printQuoteComparison(context: Context, of: OfBuy, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeQuoteComparison(desk, of.buyId) });
}

export function printOrder(context: Context, of: OfBuy, query: OrderPaperQuery) {
  const wish = { buyId: of.buyId, orderNo: query.order };
  return print(context, { query, ...of, make: (desk) => makeOrder(desk, wish) });
}

export function printLandingSheet(context: Context, of: OfBuy, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeLandingSheet(desk, of.buyId) });
}

export function printSplitSheet(context: Context, of: { splitId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeSplitSheet(desk, of.splitId) });
}

export function printClaimLetter(context: Context, of: { claimId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeClaimLetter(desk, of.claimId) });
}

export function printStatement(
  context: Context,
  of: { householdId: string } & At,
  query: StatementPaperQuery,
) {
  const { householdId } = of;
  const { from, to } = query;
  const listAsked = () => readAskedDeposits(context, householdId);
  return print(context, {
    query,
    ...of,
    make: (desk) => makeStatement(desk, { householdId, from, to, listAsked }),
  });
}

/** A household's month on one page, for itself or for whoever has no e-mail. */
export function printMonth(context: Context, of: { householdId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeMonth(desk, of.householdId) });
}

export function printRunSheet(context: Context, of: { sessionId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeRunSheet(desk, of.sessionId) });
}

export function printSeamLog(context: Context, of: { sessionId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeSeamLog(desk, of.sessionId) });
}

export function printLoanSlip(context: Context, of: { loanId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeLoanSlip(desk, of.loanId) });
}

export function printHoldTag(context: Context, of: { holdId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeHoldTag(desk, of.holdId) });
}

export function printRecallNotice(context: Context, of: { holdId: string } & At, query: RecallPaperQuery) {
  const wish = { holdId: of.holdId, householdId: query.household, pantryId: query.pantry };
  return print(context, { query, ...of, make: (desk) => makeRecallNotice(desk, wish) });
}

export function printDoubtTag(context: Context, of: { checkId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeDoubtTag(desk, of.checkId) });
}

export function printGiftManifest(context: Context, of: { manifestId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeGiftManifest(desk, of.manifestId) });
}

export function printGiftYear(context: Context, of: At, query: GiftYearPaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeGiftYear(desk, query.year) });
}

export function printOfferNotice(context: Context, of: { offerId: string } & At, query: PaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeOfferNotice(desk, of.offerId) });
}

export function printTransferSlip(context: Context, of: { offerId: string } & At, query: TransferSlipQuery) {
  const wish = { offerId: of.offerId, entryId: query.entry };
  return print(context, { query, ...of, make: (desk) => makeTransferSlip(desk, wish) });
}

/** The pack that a duty is handed over with. */
export function printHandover(context: Context, of: At, query: PaperQuery) {
  return print(context, { query, ...of, make: makeHandover });
}

/** A year as reviewer, treasurer and coordinator sign it. */
export function printYearReview(context: Context, of: At, query: YearReviewPaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeYearReview(desk, query.through) });
}

export function printShelfList(context: Context, of: At, { of: whose, ...query }: ShelfPaperQuery) {
  whoseStock(context, whose, mayPrintCommonShelf);
  return print(context, { query, ...of, make: (desk) => makeShelfList(desk, whose) });
}

export function printEatFirstList(context: Context, of: At, { of: whose, ...query }: ShelfPaperQuery) {
  whoseStock(context, whose, mayPrintCommonShelf);
  return print(context, { query, ...of, make: (desk) => makeEatFirstList(desk, whose) });
}

/** What is to be looked at by today; the reading refuses common stock to who does not look after it. */
export function printInspectionSheet(context: Context, of: At, { of: whose, ...query }: ShelfPaperQuery) {
  return print(context, { query, ...of, make: (desk) => makeInspectionSheet(desk, whose) });
}

export function printWhoOwes(context: Context, of: At, query: PaperQuery) {
  return print(context, { query, ...of, make: makeWhoOwes });
}

/** Read after the statement itself, which has refused strangers and written the look down. */
function readAskedDeposits(context: Context, householdId: string): Promise<AskedDeposit[]> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const asks = await listAskedDeposits(tx, storehouseId, householdId);
    const withHeld: AskedDeposit[] = [];
    for (const { buyId, ...ask } of asks)
      withHeld.push({
        ...ask,
        heldMinorUnits: await loadHeldDeposit(tx, storehouseId, { householdId, buyId }),
      });
    return withHeld;
  });
}

type Job = { readonly query: PaperQuery; readonly make: (desk: Desk) => Promise<MadePaper> } & At;

/**
 * Makes a paper, keeps that it was printed, and draws it. A paper says as of which entry it holds, so it is made again
 * when something was booked while its facts were read.
 */
async function print(context: Context, { query, make, origin }: Job): Promise<PrintedPaper> {
  const { storehouse, lastEntryNo } = await readHouse(context);
  const { actor } = context;
  const language = query.language ?? (storehouse.language === 'es' ? 'es' : 'en');
  const unit = query.unit ?? (storehouse.massDisplay === 'kg' ? 'kg' : 'lb');
  const formats = formatsOf({ language, unit, currency: actor.currency, timeZone: actor.timeZone });
  const made = await make({ context, formats });
  const paper = await keepPrinting(context, { made, lastEntryNo });
  if (!paper) return print(context, { query, make, origin });
  const { kind } = made.subject;
  const { words } = formats;
  const bytes = await drawPaper(made.contentWith(paper.paperCode), {
    storehouse: storehouse.name,
    title: words.titles[kind],
    paperNo: paper.paperNo,
    code: paper.paperCode,
    address: `${origin}/s/${actor.storehouseId}/papers/${paper.paperCode}`,
    language,
    printedLocally: formats.iso(context.now()),
    asOfEntryNo: paper.asOfEntryNo,
    words: words.frame,
    size: query.size,
    isLarge: query.large,
    isLandscape: made.isLandscape === 'when-large' ? query.large : (made.isLandscape ?? false),
    printedAt: context.now(),
  });
  return { bytes, kind, code: paper.paperCode };
}

function readHouse(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => ({
    storehouse: await loadStorehouse(tx, storehouseId),
    lastEntryNo: await loadLastEntryNo(tx, storehouseId),
  }));
}

/** The row of this printing, the same one as before where nothing has changed; undefined when the book went on. */
function keepPrinting(context: Context, { made, lastEntryNo }: { made: MadePaper; lastEntryNo: number }) {
  const { storehouseId, personId, timeZone } = context.actor;
  const printedAt = context.now();
  const printing: Printing = {
    ...made.subject,
    storehouseId,
    asOfEntryNo: lastEntryNo,
    printedOn: dayInZone(printedAt.getTime(), timeZone),
    printedBy: personId,
    printedAt,
  };
  return withTx(context, async (tx) => {
    if ((await loadLastEntryNo(tx, storehouseId)) !== lastEntryNo) return undefined;
    const before = await findPrinting(tx, printing);
    if (before) return before;
    const paperNo = await takeNumber(tx, storehouseId, 'paper');
    const paperCode = codeFromNumber(paperNo, PAPER_CODE_CHARACTERS);
    const kept = await insertPaper(tx, { ...printing, paperId: newId(context), paperNo, paperCode });
    return kept ?? findPrinting(tx, printing);
  });
}

/** The thing that a loan is of, or the packing day of a check: its page is part of theirs. A hold is part of no other. */
async function findWithin(
  tx: Tx,
  { storehouseId, kind, buyId, subjectId }: PaperRow,
): Promise<string | null> {
  if (subjectId === null) return null;
  if (kind === 'loan-slip') {
    const { equipmentUnitId } = await loadLoan(tx, storehouseId, subjectId);
    return (await loadUnit(tx, storehouseId, equipmentUnitId)).equipmentItemId;
  }
  if (kind !== 'quarantine-tag' || buyId !== null) return null;
  return (await findCheck(tx, storehouseId, subjectId))?.packingSessionId ?? null;
}

/** What the code on a paper leads back to, for those who may read that. */
export function readPaper(context: Context, paperCode: string) {
  return withTx(context, async (tx) => {
    const paper = await loadPaperByCode(tx, context.actor.storehouseId, paperCode);
    const withinId = await findWithin(tx, paper);
    // Before its turn a household is told of no offer, by no paper either.
    if (isOfOffer(paper.kind)) await readOfferInside(tx, context, paper.subjectId ?? '');
    if (!mayFollowCode(context.actor, { ...paper, withinId })) throw new Problem('not-your-household');
    return { paper, withinId };
  });
}
