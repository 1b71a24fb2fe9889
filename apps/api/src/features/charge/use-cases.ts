import type { Tx } from '@sheafbook/db';
import type { BuyRow } from '@sheafbook/db/tables';
import { depositApplied, depositRefunded, lateCredit, type Missing, stageGuards } from '@sheafbook/ledger';
import { type ChargedLine, creditByOriginalWeights, listBearers, settleDeposit } from '@sheafbook/sharing';
import { sumOf } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForUpdate, moveStage, requireStage } from '../buy/queries.ts';
import { refuseUnmet } from '../buy/use-cases.ts';
import { listInvoiceLines } from '../invoice/queries.ts';
import { listDepositsOfBuy } from '../money/queries.ts';
import { checkedDay, postMoney } from '../money/use-cases.ts';
import { listAwardsOfBuy, loadSharingOwners, type SharingOwners } from '../split/queries.ts';
import { runAllRules, type SplitRound } from '../split/use-cases.ts';
import { loadHouseOwners, loadRules } from '../storehouse/queries.ts';
import { loadSupplier } from '../supplier/queries.ts';
import { listWithdrawnHouseholds } from '../withdrawal/queries.ts';
import { chargeBills } from './bills.ts';
import { type ComparedCosts, compareAnswer } from './comparison.ts';
import { lastWeighed, lateLine, refuseBeyondCharges } from './late-line.ts';
import { promisesOfLost } from './lost-lines.ts';
import { seesAllCharges } from './policy.ts';
import { chargeDrafts, type HouseholdAmount, shareByLot, sumByHousehold } from './postings.ts';
import {
  insertChargeLine,
  listAllotmentsOfBuy,
  listChargeLines,
  listCommonLots,
  listCommonStockBalances,
  listCredits,
  listExpectedBills,
  listStandIns,
  listUnbilledSuppliers,
  loadChargeLine,
  loadClearing,
  loadSharingFacts,
  sumWithheldDeposits,
} from './queries.ts';
import { differences, mergeCharges } from './recharge.ts';
import type { LateCredit } from './schema.ts';

export { mayShareOut } from './policy.ts';
export { shareByLot } from './postings.ts';

/**
 * Shares a buy out: charges every cost to the cent to those who got the food, sets the deposits against the charges,
 * and moves the buy on. Refused with the list of what is missing while a bag is unweighed, a gram unshared, or a
 * supplier whose goods landed has not billed them.
 */
export function shareOut(context: Context, buyId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    requireStage(buy, 'landed');
    refuseUnmet(context.actor, await listMissingToShareOut(tx, buy));
    const owners = await loadSharingOwners(tx, storehouseId);
    const { lines } = await chargeBuy(tx, context, { buy, owners });
    await postCharges(tx, context, { buy, owners, lines, what: 'shared-out' });
    await refuseUncleared(tx, storehouseId, buyId);
    await settleDeposits(tx, context, { buyId, charges: sumByHousehold(lines, owners.commonId) });
    await moveStage(tx, context, { buy, to: 'shared-out' });
    return readAllCharges(tx, context, buyId);
  });
}

/** What keeps a landed buy from being shared out. */
export async function listMissingToShareOut(tx: Tx, { storehouseId, buyId }: BuyRow): Promise<Missing[]> {
  const facts = await loadSharingFacts(tx, storehouseId, buyId);
  const ids = await listUnbilledSuppliers(tx, storehouseId, buyId);
  return [
    ...stageGuards({ from: 'landed', to: 'shared-out', facts }),
    ...(ids.length > 0 ? [{ code: 'invoice-missing', count: ids.length, ids } as const] : []),
  ];
}

/** The bills of a buy, shared by what was awarded, and of a food that was lost altogether by what was promised. `levyMinorUnits` keeps a levy that was charged before. */
async function chargeBuy(
  tx: Tx,
  context: Context,
  { buy, owners, levyMinorUnits }: { buy: BuyRow; owners: SharingOwners; levyMinorUnits?: number },
) {
  const { storehouseId } = context.actor;
  const { buyId } = buy;
  const shared = await listAwardsOfBuy(tx, storehouseId, buyId);
  const bills = await listInvoiceLines(tx, storehouseId, buyId);
  const credits = await listCredits(tx, storehouseId, buyId);
  const promised = await listAllotmentsOfBuy(tx, storehouseId, buyId);
  const lost = promisesOfLost({ bills, credits, awards: shared, promised, commonId: owners.commonId });
  const awards = [...shared, ...lost];
  const withdrawnIds = await listWithdrawnHouseholds(tx, storehouseId, buyId);
  const standInIds = await listStandIns(tx, buy);
  return chargeBills({
    bills,
    credits,
    withheldMinorUnits: await sumWithheldDeposits(tx, storehouseId, buyId),
    awards,
    owners: listBearers({ awards, withdrawnIds, standInIds, ...owners }),
    terms: await loadRules(tx, storehouseId, buy.rulesVersion ?? undefined),
    levyMinorUnits,
  });
}

type Charging = {
  readonly buy: BuyRow;
  readonly owners: SharingOwners;
  readonly lines: readonly ChargedLine[];
  readonly what: 'shared-out' | 'recharged';
};

/** Posts the charges of all lines as one entry and keeps each line with its weights. Nothing to charge posts nothing. */
async function postCharges(tx: Tx, context: Context, { buy, owners, lines, what }: Charging): Promise<void> {
  const { storehouseId } = context.actor;
  const { buyId } = buy;
  const { commonId } = owners;
  const lots = await listCommonLots(tx, storehouseId, { buyId, commonId });
  const ofLine = lines.map((charged) => ({ ...charged, buyLineId: buyLineIdOf(charged.costLineId) }));
  const levy = lines.find((line) => line.costLineId === 'levy')?.minorUnits ?? 0;
  const drafts = chargeDrafts({
    buyId,
    households: sumByHousehold(lines, commonId),
    common: shareByLot(ofLine, commonId, lots),
    levyMinorUnits: what === 'shared-out' ? levy : 0,
  });
  if (drafts.length === 0) return;
  const { entryId } = await postEntry(tx, context, { what, onDay: todayOf(context), drafts, buyId });
  for (const { buyLineId, ...charged } of ofLine)
    if (charged.shares.some((share) => share.weight !== 0 || share.minorUnits !== 0))
      await insertChargeLine(tx, { storehouseId, buyId, buyLineId, entryId, charged });
}

const buyLineIdOf = (costLineId: string): string | null =>
  costLineId.startsWith('goods:') ? costLineId.slice('goods:'.length) : null;

/** Costs that came into the clearing account by no bill and no claim can't be shared by any rule: find them first. */
async function refuseUncleared(tx: Tx, storehouseId: string, buyId: string): Promise<void> {
  const minorUnits = await loadClearing(tx, storehouseId, buyId);
  if (minorUnits !== 0)
    throw new Problem('does-not-add-up', {
      detail: 'The clearing account holds something that is neither billed, claimed nor withheld.',
      minorUnits,
    });
}

async function settleDeposits(
  tx: Tx,
  context: Context,
  { buyId, charges }: { buyId: string; charges: readonly HouseholdAmount[] },
): Promise<void> {
  const deposits = await listDepositsOfBuy(tx, context.actor.storehouseId, buyId);
  const chargeOf = new Map(charges.map((charge) => [charge.householdId, charge.amountMinorUnits]));
  const drafts = deposits.flatMap(({ householdId, heldMinorUnits }) => {
    const charge = Math.max(0, chargeOf.get(householdId) ?? 0);
    const { appliedMinorUnits, refundMinorUnits } = settleDeposit(heldMinorUnits, charge);
    const of = { householdId, buyId };
    return [
      ...(appliedMinorUnits > 0 ? depositApplied({ ...of, amountMinorUnits: appliedMinorUnits }) : []),
      // What the deposit has above the charge stands on the balance, and is paid out on request.
      ...(refundMinorUnits > 0
        ? depositRefunded({ ...of, amountMinorUnits: refundMinorUnits, to: 'household' })
        : []),
    ];
  });
  if (drafts.length === 0) return;
  await postEntry(tx, context, { what: 'deposits-applied', onDay: todayOf(context), drafts, buyId });
}

/**
 * Brings the charges of a shared-out buy up to its bills again, after a claim was refused or credited in part, a bill
 * came late, or more of the food was split; the clearing account is at nothing after it.
 */
export function rechargeBuy(context: Context, buyId: string) {
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, context.actor.storehouseId, buyId);
    requireStage(buy, 'shared-out');
    const posted = await bringChargesUp(tx, context, buy);
    if (!posted)
      throw new Problem('nothing-to-post', { detail: 'The charges meet the bills to the cent already.' });
    return readAllCharges(tx, context, buyId);
  });
}

/** For use cases that change what a shared-out buy cost, in their own transaction. The buy is locked for update. */
async function bringChargesUp(tx: Tx, context: Context, buy: BuyRow): Promise<boolean> {
  const { storehouseId } = context.actor;
  const { owners, lines } = await findDifferences(tx, context, buy);
  if (lines.length === 0) return false;
  await postCharges(tx, context, { buy, owners, lines, what: 'recharged' });
  await refuseUncleared(tx, storehouseId, buy.buyId);
  return true;
}

async function findDifferences(tx: Tx, context: Context, buy: BuyRow) {
  const { storehouseId } = context.actor;
  const owners = await loadSharingOwners(tx, storehouseId);
  const charged = mergeCharges(await listChargeLines(tx, storehouseId, buy.buyId));
  const levyMinorUnits = charged.find((line) => line.costLineId === 'levy')?.minorUnits ?? 0;
  const target = await chargeBuy(tx, context, { buy, owners, levyMinorUnits });
  return { owners, lines: differences(target.lines, charged) };
}

/**
 * Whether a shared-out buy has costs or grams that its charges don't know yet. Bills that nobody can bear as they stand
 * count too, such as those of a voided invoice whose claims remain: recharging says what is wrong with them.
 */
export async function areChargesBehind(tx: Tx, context: Context, buy: BuyRow): Promise<boolean> {
  try {
    return (await findDifferences(tx, context, buy)).lines.length > 0;
  } catch (error) {
    if (error instanceof Problem && error.code === 'does-not-add-up') return true;
    throw error;
  }
}

/**
 * Money that comes back (or a bill that comes) once a buy is shared out goes to those who bore the line, by its very
 * weights, also to a household that has left. Common stock's part lessens what stands of it in the books; what was
 * sold since is the store fund's.
 */
export function giveLateCredit(context: Context, buyId: string, wish: LateCredit) {
  const { storehouseId } = context.actor;
  const onDay = checkedDay(context, wish);
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const { chargeLineId } = wish;
    const line = await loadChargeLine(tx, storehouseId, { buyId, chargeLineId });
    const lines = await listChargeLines(tx, storehouseId, buyId);
    if (wish.supplierId) await loadSupplier(tx, storehouseId, wish.supplierId);
    requireStage(buy, 'shared-out', 'closed');
    refuseBeyondCharges(lines, wish);
    const original = lastWeighed(lines, line.costLine);
    const shares = creditByOriginalWeights(wish.minorUnits, original);
    const drafts = await creditDrafts(tx, context, { buyId, buyLineId: line.buyLineId, shares, wish });
    const entry = {
      what: wish.minorUnits > 0 ? 'late-credit' : 'late-bill',
      note: wish.reason,
      buyId,
      onDay,
    };
    const { minorUnits } = wish;
    const { entryId } = await postMoney(tx, context, {
      ...entry,
      subjectId: chargeLineId,
      minorUnits,
      drafts,
    });
    await insertChargeLine(tx, {
      storehouseId,
      buyId,
      buyLineId: line.buyLineId,
      entryId,
      charged: lateLine(original, shares),
    });
    return readAllCharges(tx, context, buyId);
  });
}

async function creditDrafts(
  tx: Tx,
  context: Context,
  credit: {
    buyId: string;
    buyLineId: string | null;
    shares: readonly { readonly ownerId: string; readonly minorUnits: number }[];
    wish: LateCredit;
  },
) {
  const { storehouseId } = context.actor;
  const { buyId, buyLineId, shares, wish } = credit;
  const { commonId } = await loadHouseOwners(tx, storehouseId);
  const lots = await listCommonLots(tx, storehouseId, { buyId, commonId });
  const stock = await listCommonStockBalances(tx, storehouseId);
  const asLine = { costLineId: 'late', minorUnits: wish.minorUnits, buyLineId, shares: weightless(shares) };
  const commonParts = shareByLot([asLine], commonId, lots).map(({ causeId, amountMinorUnits }) => {
    const most = wish.minorUnits > 0 ? (stock.get(causeId) ?? 0) : Number.POSITIVE_INFINITY;
    const wanted = Math.abs(amountMinorUnits);
    return { causeId, amountMinorUnits: Math.min(wanted, most), restMinorUnits: Math.max(0, wanted - most) };
  });
  return lateCredit({
    from: wish.supplierId ? { supplierId: wish.supplierId } : wish.till === 'cash' ? 'cash_tin' : 'bank',
    amountMinorUnits: wish.minorUnits,
    shares: shares
      .filter((share) => share.ownerId !== commonId)
      .map(({ ownerId, minorUnits }) => ({ householdId: ownerId, amountMinorUnits: Math.abs(minorUnits) })),
    commonStock: commonParts.map(({ causeId, amountMinorUnits }) => ({ causeId, amountMinorUnits })),
    storeFundMinorUnits: sumOf(commonParts.map((part) => part.restMinorUnits)),
  });
}

const weightless = (shares: readonly { readonly ownerId: string; readonly minorUnits: number }[]) =>
  shares.map((share) => ({ ...share, weight: 0, gotSpareUnit: false }));

export function readCharges(context: Context, buyId: string) {
  return withTx(context, async (tx) => {
    const charges = await readAllCharges(tx, context, buyId);
    if (seesAllCharges(context.actor))
      await notePrivateRead(tx, context, {
        householdIds: charges.totals.map((total) => total.householdId),
        what: 'charges',
        purpose: 'charges of a buy',
      });
    return charges;
  });
}

/**
 * The six rules side by side on what has landed of a food, before one is chosen: grams, this food's goods, and what
 * the whole buy would cost each household. Foods that are not split yet count as promised, bills that are not in yet
 * as ordered.
 */
export function compareSplits(context: Context, where: { buyId: string; lineId: string }) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const buy = await loadBuy(tx, storehouseId, where.buyId);
      const { round, answers } = await runAllRules(tx, context, { buy, lineId: where.lineId });
      const costs = await loadComparedCosts(tx, context, { buy, round });
      return {
        actor: context.actor,
        round,
        isEstimate: costs.isEstimate,
        rules: answers.map((answer) => ({ answer, ...compareAnswer(answer, round, costs) })),
      };
    },
    { task: 'need-first' },
  );
}

export type Comparison = Awaited<ReturnType<typeof compareSplits>>;

async function loadComparedCosts(
  tx: Tx,
  context: Context,
  { buy, round }: { buy: BuyRow; round: SplitRound },
): Promise<ComparedCosts> {
  const { storehouseId } = context.actor;
  const { buyId } = buy;
  const expected = await listExpectedBills(tx, storehouseId, buyId);
  const awards = await listAwardsOfBuy(tx, storehouseId, buyId);
  const splitIds = new Set([round.line.buyLineId, ...awards.map((award) => award.buyLineId)]);
  const promised = await listAllotmentsOfBuy(tx, storehouseId, buyId);
  return {
    isEstimate: expected.length > 0,
    bills: [...(await listInvoiceLines(tx, storehouseId, buyId)), ...expected],
    credits: await listCredits(tx, storehouseId, buyId),
    withheldMinorUnits: await sumWithheldDeposits(tx, storehouseId, buyId),
    otherAwards: [...awards, ...promised.filter((allotment) => !splitIds.has(allotment.buyLineId))],
    withdrawnIds: await listWithdrawnHouseholds(tx, storehouseId, buyId),
    standInIds: await listStandIns(tx, buy),
    terms: await loadRules(tx, storehouseId, buy.rulesVersion ?? undefined),
  };
}

export type Charges = Awaited<ReturnType<typeof readAllCharges>>;

async function readAllCharges(tx: Tx, context: Context, buyId: string) {
  const { actor } = context;
  const owners = await loadSharingOwners(tx, actor.storehouseId);
  const lines = await listChargeLines(tx, actor.storehouseId, buyId);
  const asCharged = lines.map((line) => ({ ...line, costLineId: line.costLine }));
  const buy = await loadBuy(tx, actor.storehouseId, buyId);
  return {
    actor,
    buy,
    owners,
    lines,
    totals: sumByHousehold(asCharged, owners.commonId),
    commonMinorUnits: sumOf(
      lines.flatMap((line) =>
        line.shares.filter((share) => share.ownerId === owners.commonId).map((share) => share.minorUnits),
      ),
    ),
    clearingMinorUnits: await loadClearing(tx, actor.storehouseId, buyId),
  };
}
