import type { Tx } from '@sheafbook/db';
import type { BuyRow, ClaimRow } from '@sheafbook/db/tables';
import {
  claimCredited,
  claimRaised,
  claimRefusedAfterClose,
  claimRefusedWhileOpen,
  type MovementDraft,
} from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listBuyLines, loadBuy, lockBuyForUpdate, requireStage } from '../buy/queries.ts';
import { listOrderedBags } from '../delivery/queries.ts';
import { listInvoiceLines } from '../invoice/queries.ts';
import { checkedDay, postMoney } from '../money/use-cases.ts';
import { listSupplierOrders } from '../order/queries.ts';
import { loadSupplier } from '../supplier/queries.ts';
import { type ClaimFacts, mostClaimable } from './cap.ts';
import { listAnsweredClaims, listClaimSteps, loadClaimInWords } from './history.ts';
import { insertClaim, listClaims, loadClaim, updateSettled } from './queries.ts';
import type { ClaimCredit, ClaimQuery, ClaimRefusal, ClaimWish } from './schema.ts';

export { listOpenClaims } from './history.ts';
export { mayKeepClaims } from './policy.ts';

/**
 * Claims money back from a supplier or carrier. From then on the buy costs that much less; what the supplier does not
 * grant comes back on it.
 */
export function raiseClaim(context: Context, buyId: string, wish: ClaimWish): Promise<ClaimRow> {
  const { storehouseId, personId } = context.actor;
  const raisedOn = checkedDay(context, wish);
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const { supplierId, buyLineId, kind, minorUnits, because } = wish;
    await loadSupplier(tx, storehouseId, supplierId);
    await refuseForeignLine(tx, buy, buyLineId);
    requireStage(buy, 'ordered', 'landed', 'shared-out');
    await refuseUnfounded(tx, buy, wish);
    const claim = await insertClaim(tx, {
      ...{ storehouseId, buyId, supplierId, buyLineId, kind, minorUnits, because },
      claimId: newId(context),
      raisedOn,
      raisedBy: personId,
    });
    const drafts = claimRaised({ buyId, supplierId, claimId: claim.claimId, amountMinorUnits: minorUnits });
    const about = { buyId, subjectId: claim.claimId, note: because };
    await postMoney(tx, context, { ...about, what: 'claim-raised', onDay: raisedOn, minorUnits, drafts });
    return claim;
  });
}

async function refuseForeignLine(tx: Tx, buy: BuyRow, buyLineId: string | null): Promise<void> {
  if (buyLineId === null) return;
  const lines = await listBuyLines(tx, buy.storehouseId, buy.buyId);
  if (!lines.some((line) => line.buyLineId === buyLineId))
    throw fieldProblem('thing-not-found', 'buyLineId', 'There is no such food in this buy.');
}

/** A claim is against somebody who was ordered from or who billed, and never for more than the thing costs. */
async function refuseUnfounded(tx: Tx, buy: BuyRow, wish: ClaimWish): Promise<void> {
  const facts = await loadClaimFacts(tx, buy);
  const isKnown = [...facts.ordered, ...facts.billed].some((line) => line.supplierId === wish.supplierId);
  if (!isKnown)
    throw fieldProblem('invalid-input', 'supplierId', 'Nothing of this buy came from this supplier.');
  const mostMinorUnits = mostClaimable(facts, wish);
  if (wish.minorUnits > mostMinorUnits)
    throw new Problem('does-not-add-up', {
      detail: 'That is more than it cost, less what has been claimed before.',
      fields: [{ field: 'minorUnits', message: 'A claim is never more than what it is about.' }],
      mostMinorUnits,
    });
}

async function loadClaimFacts(tx: Tx, { storehouseId, buyId }: BuyRow): Promise<ClaimFacts> {
  const goods = await listOrderedBags(tx, storehouseId, buyId);
  const orders = await listSupplierOrders(tx, storehouseId, buyId);
  return {
    ordered: [
      ...goods.map(({ supplierId, buyLineId, goodsMinorUnits: minorUnits }) => ({
        ...{ supplierId, buyLineId, minorUnits },
        kind: 'goods' as const,
      })),
      ...orders
        .filter((order) => order.cancelledAt === null)
        .map(({ supplierId, freightMinorUnits: minorUnits }) => ({
          ...{ supplierId, minorUnits },
          kind: 'freight' as const,
          buyLineId: null,
        })),
    ],
    billed: await listInvoiceLines(tx, storehouseId, buyId),
    claims: await listClaims(tx, storehouseId, buyId),
  };
}

/** The supplier grants a claim, in full or in part; what it does not grant counts as refused, in the same entry. */
export function creditClaim(context: Context, claimId: string, wish: ClaimCredit): Promise<ClaimRow> {
  return settle(context, claimId, {
    wish,
    what: 'claim-credited',
    note: wish.note,
    creditedOf: (claim) => {
      if (wish.minorUnits > claim.minorUnits)
        throw fieldProblem('does-not-add-up', 'minorUnits', 'The claim asked for less than that.');
      return wish.minorUnits;
    },
  });
}

/** The supplier refuses a claim: the cost is the buy's again, or a loss of the storehouse once the buy is closed. */
export function refuseClaim(context: Context, claimId: string, wish: ClaimRefusal): Promise<ClaimRow> {
  return settle(context, claimId, {
    wish,
    what: 'claim-refused',
    note: wish.because,
    creditedOf: () => 0,
  });
}

/** The treasurer gives up a claim that the supplier never answered; it is posted as one that was refused. */
export function writeClaimOff(context: Context, claimId: string, wish: ClaimRefusal): Promise<ClaimRow> {
  return settle(context, claimId, {
    wish,
    what: 'claim-written-off',
    note: wish.because,
    creditedOf: () => 0,
  });
}

type Settlement = {
  wish: { onDay?: string | undefined; currency?: string | undefined; till?: 'bank' | 'cash' | undefined };
  what: 'claim-credited' | 'claim-refused' | 'claim-written-off';
  note: string;
  creditedOf: (claim: ClaimRow) => number;
};

function settle(context: Context, claimId: string, settlement: Settlement): Promise<ClaimRow> {
  const { storehouseId } = context.actor;
  const { wish, what, note, creditedOf } = settlement;
  const settledOn = checkedDay(context, wish);
  return withTx(context, async (tx) => {
    const { buyId } = await loadClaim(tx, storehouseId, claimId);
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const claim = await loadClaim(tx, storehouseId, claimId);
    if (claim.state !== 'open')
      throw new Problem('claim-settled', { state: claim.state, settledOn: claim.settledOn });
    const creditedMinorUnits = creditedOf(claim);
    const drafts = settlementDrafts(buy, claim, { creditedMinorUnits, till: wish.till });
    const { minorUnits } = claim;
    const about = { buyId, subjectId: claimId, note };
    await postMoney(tx, context, { ...about, what, onDay: settledOn, minorUnits, drafts });
    const state = creditedMinorUnits > 0 ? 'credited' : 'refused';
    return updateSettled(tx, claim, { state, settledOn, creditedMinorUnits });
  });
}

function settlementDrafts(
  buy: BuyRow,
  claim: ClaimRow,
  grant: { creditedMinorUnits: number; till: 'bank' | 'cash' | undefined },
): MovementDraft[] {
  const { supplierId, claimId, buyId } = claim;
  const of = { supplierId, claimId, buyId };
  const till = grant.till && (grant.till === 'cash' ? 'cash_tin' : 'bank');
  const refusedMinorUnits = claim.minorUnits - grant.creditedMinorUnits;
  const hasEnded = buy.stage === 'closed' || buy.stage === 'called-off';
  const refused = { ...of, amountMinorUnits: refusedMinorUnits };
  return [
    ...(grant.creditedMinorUnits > 0
      ? claimCredited({ ...of, amountMinorUnits: grant.creditedMinorUnits, ...(till ? { till } : {}) })
      : []),
    ...(refusedMinorUnits > 0
      ? hasEnded
        ? claimRefusedAfterClose({ ...refused, causeId: buyId })
        : claimRefusedWhileOpen(refused)
      : []),
  ];
}

export function readClaim(context: Context, claimId: string): Promise<ClaimRow> {
  return withTx(context, (tx) => loadClaim(tx, context.actor.storehouseId, claimId));
}

/** A claim from the day it was raised to its answer, with each letter that was printed in between. */
export function readClaimHistory(context: Context, claimId: string) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => {
    const claim = await loadClaimInWords(tx, storehouseId, claimId);
    return { claim, steps: await listClaimSteps(tx, storehouseId, claimId), currency };
  });
}

/** The claims that have had their answer, the latest first. */
export function readAnsweredClaims(context: Context, { after, limit }: ClaimQuery) {
  const { storehouseId } = context.actor;
  return withTx(context, (tx) => listAnsweredClaims(tx, storehouseId, { after, limit: limit + 1 }));
}

export function readClaims(context: Context, buyId: string, query: ClaimQuery): Promise<ClaimRow[]> {
  const { storehouseId } = context.actor;
  const { after, limit } = query;
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    return listClaims(tx, storehouseId, buyId, { after, limit: limit + 1 });
  });
}
