import type { Tx } from '@sheafbook/db';
import type { BuyRow, OrderConsentRow } from '@sheafbook/db/tables';
import { type Missing, stageGuards } from '@sheafbook/ledger';
import { isPriceNowAbove } from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForUpdate, moveStage, requireStage } from '../buy/queries.ts';
import { refuseUnmet } from '../buy/use-cases.ts';
import { deleteAllDepositAsks } from '../deposit/queries.ts';
import { type BuyFill, deleteAllotments, deleteFixedBags, listFixedBags, loadFill } from '../fill/queries.ts';
import { takeNumber } from '../household/queries.ts';
import { listDepositsOfBuy } from '../money/queries.ts';
import {
  type BuyQuote,
  deleteFreightSteps,
  insertFreightSteps,
  insertPriceBreaks,
  isStanding,
  listQuotesOfBuy,
  loadQuoteOfBuy,
  updateQuote,
} from '../quote/queries.ts';
import { loadRules } from '../storehouse/queries.ts';
import { presentTerms } from './present-terms.ts';
import {
  deleteOrderConsents,
  deletePriceBreaks,
  insertOrderConsent,
  insertOrderLines,
  insertSupplierOrders,
  listCoordinators,
  listOrderConsents,
  listOrderedFoods,
  listOrderHeads,
} from './queries.ts';
import { draftOrders, type OrderDraft, totalOf } from './reprice.ts';
import type { ConfirmedTerms, OrderConsent, Reopening } from './schema.ts';

export { dutiesToAgree, mayAgreeAs } from './policy.ts';

type Duty = 'coordinator' | 'treasurer';

export type ConsentView = {
  readonly buy: BuyRow;
  readonly consents: readonly OrderConsentRow[];
  readonly orderNos: readonly number[];
};

/**
 * One of the two agreements that an order needs, from two people. The first is only written down; the second looks at
 * the guards and orders. What the guards refuse leaves no agreement behind, so that it can be given again later.
 */
export function agreeToOrder(context: Context, buyId: string, wish: OrderConsent): Promise<ConsentView> {
  const { storehouseId, personId } = context.actor;
  const duty = dutyOf(context, wish);
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    requireStage(buy, 'fixed');
    const before = await listOrderConsents(tx, storehouseId, buyId);
    if (before.some((consent) => consent.duty === duty))
      throw new Problem('already-there', { detail: `The ${duty} has agreed already.` });
    if (before.some((consent) => consent.personId === personId)) throw new Problem('second-login-needed');
    await insertOrderConsent(tx, { storehouseId, buyId, duty, personId, agreedAt: context.now() });
    const consents = await listOrderConsents(tx, storehouseId, buyId);
    if (consents.length < 2) return { buy, consents, orderNos: [] };
    const { drafts, missing } = await guardOrder(tx, context, { buy, consents });
    refuseUnmet(context.actor, missing);
    const orderNos = await placeOrders(tx, context, { buy, drafts, note: wish.note });
    return { buy: await moveStage(tx, context, { buy, to: 'ordered' }), consents, orderNos };
  });
}

/** For which duty the actor agrees: the one named, or the only one held. */
function dutyOf({ actor }: Context, wish: OrderConsent): Duty {
  const held = (['coordinator', 'treasurer'] as const).filter((duty) => actor.duties.has(duty));
  if (wish.duty !== undefined) {
    if (!held.includes(wish.duty)) throw new Problem('duty-missing');
    return wish.duty;
  }
  const [only, second] = held;
  if (only === undefined || second !== undefined)
    throw fieldProblem('invalid-input', 'duty', 'You hold both duties: say for which one you agree.');
  return only;
}

/** What keeps a fixed buy from being ordered, with the agreements that were given so far. */
export async function listMissingToOrder(
  tx: Tx,
  context: Context,
  given: { buy: BuyRow; consents: readonly OrderConsentRow[] },
): Promise<Missing[]> {
  return (await guardOrder(tx, context, given)).missing;
}

/** The orders at today's terms, with everything that is missing before they may go out. */
async function guardOrder(
  tx: Tx,
  context: Context,
  { buy, consents }: { buy: BuyRow; consents: readonly OrderConsentRow[] },
): Promise<{ drafts: OrderDraft[]; missing: Missing[] }> {
  const { storehouseId } = context.actor;
  const todayOn = todayOf(context);
  const fixed = await listFixedBags(tx, storehouseId, buy.buyId);
  const drafts = draftOrders(fixed, await listQuotesOfBuy(tx, storehouseId, buy.buyId));
  const deposits = await listDepositsOfBuy(tx, storehouseId, buy.buyId);
  assert(buy.fillId !== null && buy.rulesVersion !== null, 'a fixed buy names its fill and its rules');
  const { answer } = await loadFill(tx, storehouseId, buy.fillId);
  const rules = await loadRules(tx, storehouseId, buy.rulesVersion);
  const missing: Missing[] = [
    ...(fixed.length === 0 ? [{ code: 'nothing-allotted' } as const] : []),
    ...listBelowMinimum(answer),
    ...stageGuards({
      from: 'fixed',
      to: 'ordered',
      facts: {
        approvals: consents.map(({ personId, duty }) => ({ loginId: personId, duty: duty as Duty })),
        deposits: deposits.map(({ householdId, askedMinorUnits, heldMinorUnits, isWaived }) => ({
          householdId,
          dueMinorUnits: askedMinorUnits ?? 0,
          receivedMinorUnits: heldMinorUnits,
          isWaived,
        })),
        quotes: drafts.map(({ quote }) => toQuoteFact(quote)),
        todayOn,
        estimatedMinorUnits: totalOf(answer.baskets),
        repricedMinorUnits: totalOf(drafts),
        priceRisePercent: rules.priceRisePercent,
      },
    }),
    ...listRetracted(drafts, todayOn),
  ];
  return { drafts, missing };
}

const toQuoteFact = ({ quote, offers }: BuyQuote) => ({
  quoteId: quote.quoteId,
  foodId: offers[0]?.buyLineId ?? '',
  validUntilOn: quote.validUntil,
});

/** A withdrawal after fixing may leave a supplier with less than its minimum, and then nothing is bought there. */
function listBelowMinimum({ baskets }: BuyFill): Missing[] {
  const ids = baskets.filter((basket) => basket.isBelowMinimum).map((basket) => basket.supplierId);
  return ids.length > 0 ? [{ code: 'supplier-minimum-not-met', count: ids.length, ids }] : [];
}

/** A quote that its supplier took back is as good as lapsed. */
function listRetracted(drafts: readonly OrderDraft[], todayOn: string): Missing[] {
  const ids = drafts
    .map(({ quote }) => quote.quote)
    .filter((quote) => quote.validUntil >= todayOn && !isStanding(quote, todayOn))
    .map((quote) => quote.quoteId);
  return ids.length > 0 ? [{ code: 'quote-lapsed', count: ids.length, ids }] : [];
}

async function placeOrders(
  tx: Tx,
  context: Context,
  { buy, drafts, note }: { buy: BuyRow; drafts: readonly OrderDraft[]; note: string },
): Promise<number[]> {
  const { storehouseId } = context.actor;
  const orderNos: number[] = [];
  for (const draft of drafts) {
    const supplierOrderId = newId(context);
    const orderNo = await takeNumber(tx, storehouseId, 'order');
    const { supplierId, quoteId } = draft.quote.quote;
    await insertSupplierOrders(tx, [
      {
        storehouseId,
        supplierOrderId,
        orderNo,
        buyId: buy.buyId,
        supplierId,
        quoteId,
        orderedOn: todayOf(context),
        goodsMinorUnits: draft.goodsMinorUnits,
        freightMinorUnits: draft.freightMinorUnits,
        deliverTo: buy.landingPlace,
        note,
      },
    ]);
    await insertOrderLines(
      tx,
      draft.lines.map((line) => ({ storehouseId, supplierOrderId, ...line })),
    );
    orderNos.push(orderNo);
  }
  return orderNos;
}

export type ConfirmedView = {
  readonly quote: BuyQuote;
  readonly estimatedMinorUnits: number;
  readonly repricedMinorUnits: number;
  readonly needsFixingAgain: boolean;
};

/**
 * Writes down what a supplier asks now that the buy is fixed, and what the order comes to by it. An agreement that was
 * given before was to other prices, so it goes. What the households were asked for stays: a small rise is theirs to
 * bear, a large one needs the buy to be fixed again.
 */
export function confirmTerms(
  context: Context,
  named: { buyId: string; quoteId: string },
  wish: ConfirmedTerms,
): Promise<ConfirmedView> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, named.buyId);
    const before = await loadQuoteOfBuy(tx, storehouseId, named);
    refuseOtherBags(before, wish);
    requireStage(buy, 'fixed');
    if (before.quote.version !== wish.version)
      throw new Problem('stale-version', { newer: presentTerms(before) });
    if (before.quote.withdrawnAt !== null || wish.validUntil < todayOf(context))
      throw fieldProblem(
        'quote-not-valid',
        'validUntil',
        'The supplier must let it stand for today at least.',
      );
    await replaceTerms(tx, before, wish);
    await deleteOrderConsents(tx, storehouseId, named.buyId);
    return weighConfirmed(tx, buy, await loadQuoteOfBuy(tx, storehouseId, named));
  });
}

function refuseOtherBags({ offers }: BuyQuote, wish: ConfirmedTerms): void {
  const known = new Set(offers.map((offer) => offer.bagOfferId));
  const stray = wish.offers.findIndex((offer) => !known.has(offer.bagOfferId));
  if (stray >= 0)
    throw fieldProblem('thing-not-found', `offers.${stray}.bagOfferId`, 'The quote has no such bag.');
}

async function replaceTerms(tx: Tx, { quote }: BuyQuote, wish: ConfirmedTerms): Promise<void> {
  const { storehouseId, quoteId } = quote;
  const { validUntil, freightFreeFromMinorUnits, freightSteps, offers } = wish;
  await updateQuote(tx, quote, { validUntil, freightFreeFromMinorUnits });
  await deleteFreightSteps(tx, quote);
  await insertFreightSteps(
    tx,
    freightSteps.map((step) => ({ ...step, storehouseId, quoteId })),
  );
  const offerIds = offers.map((offer) => offer.bagOfferId);
  await deletePriceBreaks(tx, storehouseId, offerIds);
  await insertPriceBreaks(
    tx,
    offers.flatMap(({ bagOfferId, breaks }) =>
      breaks.map((priceBreak) => ({ ...priceBreak, storehouseId, bagOfferId })),
    ),
  );
}

async function weighConfirmed(tx: Tx, buy: BuyRow, quote: BuyQuote): Promise<ConfirmedView> {
  const { storehouseId, buyId, fillId, rulesVersion } = buy;
  assert(fillId !== null && rulesVersion !== null, 'a fixed buy names its fill and its rules');
  const { answer } = await loadFill(tx, storehouseId, fillId);
  const rules = await loadRules(tx, storehouseId, rulesVersion);
  const fixed = await listFixedBags(tx, storehouseId, buyId);
  const estimatedMinorUnits = totalOf(answer.baskets);
  const repricedMinorUnits = totalOf(draftOrders(fixed, await listQuotesOfBuy(tx, storehouseId, buyId)));
  const needsFixingAgain = isPriceNowAbove(estimatedMinorUnits, repricedMinorUnits, rules.priceRisePercent);
  return { quote, estimatedMinorUnits, repricedMinorUnits, needsFixingAgain };
}

/** Who has agreed so far. */
export function readConsents(context: Context, buyId: string): Promise<ConsentView> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await loadBuy(tx, storehouseId, buyId);
    return { buy, consents: await listOrderConsents(tx, storehouseId, buyId), orderNos: [] };
  });
}

/** The orders of a buy as they go to the suppliers (job map section 13, paper 3). */
export function readOrders(context: Context, buyId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await loadBuy(tx, storehouseId, buyId);
    const quotes = await listQuotesOfBuy(tx, storehouseId, buyId);
    const heads = await listOrderHeads(tx, storehouseId, buyId);
    const foods = await listOrderedFoods(tx, storehouseId, buyId);
    const coordinators = await listCoordinators(tx, storehouseId);
    return { buy, quotes, heads, foods, coordinators };
  });
}

/**
 * Opens a fixed buy for pledges again, the one step back that the trade allows: promises, bags, asks and agreements go,
 * the fill stays in the record, and deposits stay held.
 */
export function reopenBuy(context: Context, buyId: string, wish: Reopening): Promise<BuyRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    requireStage(buy, 'fixed');
    const fixed = await listFixedBags(tx, storehouseId, buyId);
    const drafts = draftOrders(fixed, await listQuotesOfBuy(tx, storehouseId, buyId));
    const deposits = await listDepositsOfBuy(tx, storehouseId, buyId);
    const missing = stageGuards({
      from: 'fixed',
      to: 'gathering',
      facts: {
        depositHolders: deposits
          .filter(({ heldMinorUnits }) => heldMinorUnits > 0)
          .map(({ householdId }) => ({ householdId, isTold: wish.toldHouseholdIds.includes(householdId) })),
        quotes: drafts.map(({ quote }) => toQuoteFact(quote)),
        todayOn: todayOf(context),
        reason: wish.reason,
      },
    });
    refuseUnmet(context.actor, missing);
    await deleteFixedBags(tx, storehouseId, buyId);
    await deleteAllotments(tx, storehouseId, buyId);
    await deleteAllDepositAsks(tx, storehouseId, buyId);
    await deleteOrderConsents(tx, storehouseId, buyId);
    const set = { rulesVersion: null, fillId: null };
    return moveStage(tx, context, { buy, to: 'gathering', reason: wish.reason, set });
  });
}
