import type { Tx } from '@sheafbook/db';
import type { AllotmentRow, BuyRow } from '@sheafbook/db/tables';
import { priceOfGrams, withdrawalHarm } from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForUpdate, requireStage } from '../buy/queries.ts';
import {
  askDeposits,
  loadHeldDeposit,
  returnDeposits,
  settleWithdrawnDeposit,
} from '../deposit/use-cases.ts';
import {
  insertAllotments,
  listAllotments,
  loadFill,
  loadFillInputs,
  updateBuyFill,
} from '../fill/queries.ts';
import {
  countUnitsWithin,
  type FillEstimate,
  listEstimates,
  loadFillSolver,
  solveEstimate,
  storeFill,
  toEstimate,
} from '../fill/use-cases.ts';
import { loadHousehold } from '../household/queries.ts';
import { deleteOrderConsents } from '../order/queries.ts';
import { listPledgesOfBuy, updatePledge } from '../pledge/queries.ts';
import { listSplitsOfBuy } from '../split/queries.ts';
import { loadRules } from '../storehouse/queries.ts';
import type { WithdrawalAnswer, WithdrawnLine } from './answer.ts';
import { placeLine } from './place-line.ts';
import { listLinePledgers } from './pledgers.ts';
import { maySeeWithdrawals, mayWithdrawAnother } from './policy.ts';
import {
  deleteAllotment,
  insertWithdrawal,
  listWithdrawals,
  listWithdrawnHouseholds,
  updateAllotment,
  type Withdrawal,
} from './queries.ts';
import type { WithdrawalWish } from './schema.ts';

type Leaving = {
  readonly buy: BuyRow;
  readonly householdId: string;
  readonly declinedIds: readonly string[];
};

/**
 * A household goes out of a buy (job map 4.7). Before the buy is fixed that is free. Between fixing and ordering the
 * bags are filled again without it, and its deposit pays for what that costs the others, as far as it reaches. Once
 * the buy is ordered its food is offered to the others, and it pays for what nobody takes and its part by household.
 */
export function withdraw(context: Context, buyId: string, wish: WithdrawalWish): Promise<Withdrawal> {
  const { storehouseId, personId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
      const householdId = await leavingHousehold(tx, context, wish);
      requireStage(buy, 'gathering', 'fixed', 'ordered', 'landed');
      const answer = await carryOut(tx, context, {
        buy,
        householdId,
        declinedIds: wish.declinedHouseholdIds,
      });
      return insertWithdrawal(tx, {
        storehouseId,
        withdrawalId: newId(context),
        buyId,
        householdId,
        stageThen: buy.stage,
        reason: wish.reason,
        answer,
        personId,
        withdrawnAt: context.now(),
      });
    },
    { task: 'fill' },
  );
}

async function leavingHousehold(tx: Tx, { actor }: Context, wish: WithdrawalWish): Promise<string> {
  const householdId = wish.householdId ?? actor.householdId;
  if (householdId === null) throw new Problem('household-needed');
  await loadHousehold(tx, actor.storehouseId, householdId);
  const isCoordinator = mayWithdrawAnother(actor);
  if (householdId !== actor.householdId && !isCoordinator) throw new Problem('not-your-household');
  if (wish.declinedHouseholdIds.length > 0 && !isCoordinator)
    throw fieldProblem(
      'duty-missing',
      'declinedHouseholdIds',
      'A coordinator asks round and notes who declines.',
    );
  return householdId;
}

function carryOut(tx: Tx, context: Context, leaving: Leaving): Promise<WithdrawalAnswer> {
  switch (leaving.buy.stage) {
    case 'gathering':
      return leaveGathering(tx, context, leaving);
    case 'fixed':
      return leaveFixed(tx, context, leaving);
    default:
      return leaveOrdered(tx, leaving);
  }
}

async function leaveGathering(tx: Tx, context: Context, leaving: Leaving): Promise<WithdrawalAnswer> {
  const pledges = await withdrawPledges(tx, context, leaving);
  const refundMinorUnits = await loadHeldDeposit(tx, context.actor.storehouseId, depositOf(leaving));
  const settled = { harmMinorUnits: 0, withheldMinorUnits: 0, refundMinorUnits };
  await settleWithdrawnDeposit(tx, context, { ...depositOf(leaving), ...settled });
  return { pledges, ...settled, lines: [] };
}

const depositOf = ({ householdId, buy }: Leaving) => ({ householdId, buyId: buy.buyId });

async function withdrawPledges(tx: Tx, context: Context, { buy, householdId }: Leaving): Promise<number> {
  const standing = await listPledgesOfBuy(tx, buy.storehouseId, buy.buyId);
  const own = standing.filter((pledge) => pledge.householdId === householdId);
  if (own.length === 0) throw nothingToWithdraw();
  const { personId: enteredBy, householdId: actingFor, isHelping } = context.actor;
  const isEnteredFor = isHelping || householdId !== actingFor;
  for (const pledge of own)
    await updatePledge(tx, pledge, { withdrawnAt: context.now(), enteredBy, isEnteredFor });
  return own.length;
}

const nothingToWithdraw = () =>
  new Problem('thing-not-found', {
    detail: 'There is nothing of this household’s in the buy to withdraw.',
    thing: 'pledge',
  });

/** Fills the bags again from the frozen inputs less its pledges, so that nothing but its going makes the difference. */
async function leaveFixed(tx: Tx, context: Context, leaving: Leaving): Promise<WithdrawalAnswer> {
  const { buy, householdId } = leaving;
  const { storehouseId, buyId, fillId, rulesVersion } = buy;
  assert(fillId !== null && rulesVersion !== null, 'a fixed buy names its fill and its rules');
  const rules = await loadRules(tx, storehouseId, rulesVersion);
  const inputs = await loadFillInputs(tx, storehouseId, fillId);
  const before = toEstimate(inputs, (await loadFill(tx, storehouseId, fillId)).answer, rules);
  const pledges = await withdrawPledges(tx, context, leaving);
  const staying = inputs.pledges.filter((pledge) => pledge.householdId !== householdId);
  const after = solveEstimate({ ...inputs, pledges: staying }, rules, await loadFillSolver());
  const harm = withdrawalHarm({
    withdrawerId: householdId,
    before: toHarmed(before),
    after: toHarmed(after),
    newUnfilledMinorUnits: valueOfNewUnfilled(before, after),
    depositMinorUnits: await loadHeldDeposit(tx, storehouseId, depositOf(leaving)),
  });
  await settleWithdrawnDeposit(tx, context, { ...depositOf(leaving), ...harm });
  const newFillId = await storeFill(tx, context, { view: { ...after, buy }, overrideReason: '' });
  await updateBuyFill(tx, buy, newFillId);
  const estimates = listEstimates(after);
  await askDeposits(tx, context, { buy, rules, estimates });
  await returnDeposits(tx, context, { buyId, except: estimates.map((estimate) => estimate.householdId) });
  await deleteOrderConsents(tx, storehouseId, buyId); // what was agreed to was another order
  return { pledges, ...harm, lines: [] };
}

const toHarmed = (estimate: FillEstimate) =>
  listEstimates(estimate).map(({ householdId: ownerId, estimateMinorUnits }) => ({
    ownerId,
    estimateMinorUnits,
  }));

/** Mass that common stock takes only because of the withdrawal, at its landed price. Minor units. */
function valueOfNewUnfilled(before: FillEstimate, after: FillEstimate): number {
  return after.fill.lines.reduce((sum, { lineId, commonGrams, landedPrice }) => {
    const earlier = before.fill.lines.find((line) => line.lineId === lineId)?.commonGrams ?? 0;
    return landedPrice ? sum + priceOfGrams(landedPrice, Math.max(0, commonGrams - earlier)) : sum;
  }, 0);
}

/** Offers its promises to the others, line by line. The deposit stays until the buy is charged. */
async function leaveOrdered(tx: Tx, leaving: Leaving): Promise<WithdrawalAnswer> {
  const { buy, householdId, declinedIds } = leaving;
  const { storehouseId, buyId, fillId } = buy;
  assert(fillId !== null, 'an ordered buy names its fill');
  await refuseWhenSplit(tx, buy);
  const gone = await listWithdrawnHouseholds(tx, storehouseId, buyId);
  if (gone.includes(householdId))
    throw new Problem('already-there', { detail: 'This household has withdrawn already.' });
  const inputs = await loadFillInputs(tx, storehouseId, fillId);
  const { answer: fill } = await loadFill(tx, storehouseId, fillId);
  const rows = await listAllotments(tx, storehouseId, buyId);
  const own = rows.filter((row) => row.ownerId === householdId && row.units > 0);
  if (own.length === 0) throw nothingToWithdraw();
  const leavingIds = new Set([householdId, ...gone, ...declinedIds]);
  const lines: WithdrawnLine[] = [];
  for (const row of own) {
    const facts = inputs.lines.find((line) => line.lineId === row.buyLineId);
    assert(facts, 'a promise stands on a line of the fill');
    const others = rows.filter((known) => known.buyLineId === row.buyLineId && known.ownerId !== householdId);
    const line = placeLine({
      own: row,
      others,
      pledgers: listLinePledgers({ inputs, fill }, { lineId: row.buyLineId, leavingIds }),
      commonOwnerId: inputs.commonOwnerId,
      capUnits: countUnitsWithin(facts.commonCapGrams, facts.massUnit),
    });
    await movePromises(tx, { own: row, others, line });
    lines.push(line);
  }
  return { pledges: own.length, harmMinorUnits: 0, withheldMinorUnits: 0, refundMinorUnits: 0, lines };
}

/** A split has turned promises into shares; whoever has a share can sell it, but the promise is gone. */
async function refuseWhenSplit(tx: Tx, buy: BuyRow): Promise<void> {
  const standing = (await listSplitsOfBuy(tx, buy.storehouseId, buy.buyId)).filter(
    (split) => split.undoneAt === null,
  );
  if (standing.length > 0)
    throw new Problem('already-split', {
      detail: 'Food of this buy has been split. Take the split back first.',
    });
}

async function movePromises(
  tx: Tx,
  { own, others, line }: { own: AllotmentRow; others: readonly AllotmentRow[]; line: WithdrawnLine },
): Promise<void> {
  for (const { ownerId, units, grams } of line.placements) {
    const row = others.find((known) => known.ownerId === ownerId);
    if (row && !row.isDropped) {
      await updateAllotment(tx, row, { units: row.units + units, grams: row.grams + grams });
      continue;
    }
    if (row) await deleteAllotment(tx, row);
    const { storehouseId, buyId, buyLineId } = own;
    await insertAllotments(tx, [{ storehouseId, buyId, buyLineId, ownerId, units, grams }]);
  }
  await updateAllotment(tx, own, { units: line.leftUnits, grams: line.leftGrams });
}

/** Who withdrew from a buy: all to the duties that need it, to others their own. */
export function readWithdrawals(context: Context, buyId: string): Promise<Withdrawal[]> {
  const { storehouseId, householdId } = context.actor;
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    const all = await listWithdrawals(tx, storehouseId, buyId);
    const shown = maySeeWithdrawals(context.actor)
      ? all
      : all.filter((withdrawal) => withdrawal.householdId === householdId);
    const householdIds = shown.map((withdrawal) => withdrawal.householdId);
    await notePrivateRead(tx, context, {
      householdIds,
      what: 'withdrawals',
      purpose: 'withdrawals of a buy',
    });
    return shown;
  });
}
