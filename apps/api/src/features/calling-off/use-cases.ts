import type { Tx } from '@sheafbook/db';
import type { BuyRow } from '@sheafbook/db/tables';
import {
  cancellationCovered,
  clearingAccount,
  depositForfeited,
  depositRefunded,
  type MovementDraft,
  reverse,
  stageGuards,
  supplierInvoiced,
} from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockBuyForUpdate, moveStage, requireStage } from '../buy/queries.ts';
import { refuseUnmet } from '../buy/use-cases.ts';
import { deleteAllDepositAsks } from '../deposit/queries.ts';
import { loadBalance } from '../money/queries.ts';
import { listSupplierOrders } from '../order/queries.ts';
import {
  closeAccountsOfBuy,
  countBagsKept,
  type DepositAtStake,
  listDepositsAtStake,
  updateOrdersCancelled,
} from './queries.ts';
import type { CallingOff } from './schema.ts';

export type CalledOff = {
  readonly buy: BuyRow;
  readonly householdsRefunded: number;
  readonly ordersCancelled: number;
  readonly cancellationMinorUnits: number;
};

/**
 * Calls a buy off before it lands and makes everyone whole in the same breath: each deposit goes onto its household's
 * balance, what a withdrawal left behind too, and what suppliers still bill is borne by the store fund (job map 4.7).
 * The guard then finds the deposits and the clearing account at zero, or refuses and nothing of it has happened.
 */
export function callOffBuy(context: Context, buyId: string, wish: CallingOff): Promise<CalledOff> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const orders = await listSupplierOrders(tx, storehouseId, buyId);
    requireStage(buy, 'planning', 'gathering', 'fixed', 'ordered');
    const supplierIds = orders.map((order) => order.supplierId);
    refuseUnordered(wish, supplierIds);
    await refuseLanded(tx, buy);

    const atStake = await listDepositsAtStake(tx, storehouseId, buyId);
    for (const deposit of atStake) await refundDeposit(tx, context, { buy, deposit, reason: wish.reason });
    for (const cost of wish.cancellationCosts) await coverCancellation(tx, context, { buyId, ...cost, wish });
    await updateOrdersCancelled(tx, storehouseId, { buyId, at: context.now(), note: wish.cancellationNote });
    await requireWhole(tx, context, { buy, wish });
    await deleteAllDepositAsks(tx, storehouseId, buyId);
    await closeAccountsOfBuy(tx, storehouseId, buyId);
    return {
      buy: await moveStage(tx, context, { buy, to: 'called-off', reason: wish.reason }),
      householdsRefunded: atStake.length,
      ordersCancelled: orders.length,
      cancellationMinorUnits: wish.cancellationCosts.reduce((sum, { minorUnits }) => sum + minorUnits, 0),
    };
  });
}

function refuseUnordered(
  { cancellationCosts, cancellationNote }: CallingOff,
  supplierIds: readonly string[],
) {
  const stranger = cancellationCosts.findIndex(({ supplierId }) => !supplierIds.includes(supplierId));
  if (stranger >= 0)
    throw fieldProblem(
      'thing-not-found',
      `cancellationCosts.${stranger}.supplierId`,
      'Nothing is ordered from this supplier in this buy.',
    );
  if (supplierIds.length > 0 && cancellationNote === '')
    throw fieldProblem(
      'buy-guard-unmet',
      'cancellationNote',
      'The buy is ordered. Cancel it with the supplier first and write down what was agreed.',
    );
}

/** Bags that were taken in belong to someone: the buy goes on, if only to share them out. */
async function refuseLanded(tx: Tx, buy: BuyRow): Promise<void> {
  const bags = await countBagsKept(tx, buy.storehouseId, buy.buyId);
  if (bags > 0)
    throw new Problem('in-use', { detail: `${bags} bags of this buy have been taken in already.`, bags });
}

/** One entry a household, so that each statement shows its own and nobody else's. */
async function refundDeposit(
  tx: Tx,
  context: Context,
  { buy, deposit, reason }: { buy: BuyRow; deposit: DepositAtStake; reason: string },
): Promise<void> {
  const { buyId } = buy;
  const { householdId, heldMinorUnits, keptMinorUnits } = deposit;
  const kept = { householdId, buyId, amountMinorUnits: keptMinorUnits };
  const all = { householdId, buyId, amountMinorUnits: heldMinorUnits + keptMinorUnits };
  const drafts: MovementDraft[] = [
    ...(keptMinorUnits > 0 ? reverse(depositForfeited(kept)) : []),
    ...depositRefunded({ ...all, to: 'household' }),
  ];
  await postEntry(tx, context, {
    what: 'deposit-refunded',
    onDay: todayOf(context),
    drafts,
    buyId,
    note: `called off: ${reason}`,
  });
}

async function coverCancellation(
  tx: Tx,
  context: Context,
  cost: { buyId: string; supplierId: string; minorUnits: number; wish: CallingOff },
): Promise<void> {
  const { buyId, supplierId, minorUnits: amountMinorUnits, wish } = cost;
  await postEntry(tx, context, {
    what: 'cancellation-covered',
    onDay: todayOf(context),
    drafts: [
      ...supplierInvoiced({ buyId, supplierId, amountMinorUnits }),
      ...cancellationCovered({ buyId, amountMinorUnits }),
    ],
    buyId,
    subjectId: supplierId,
    note: wish.cancellationNote,
  });
}

/** The guard of the stage, read back from the accounts as they stand now. */
async function requireWhole(
  tx: Tx,
  context: Context,
  { buy, wish }: { buy: BuyRow; wish: CallingOff },
): Promise<void> {
  const { storehouseId, buyId } = buy;
  const left = await listDepositsAtStake(tx, storehouseId, buyId);
  const clearingMinorUnits = await loadBalance(tx, storehouseId, clearingAccount(buyId));
  const missing = stageGuards({
    from: buy.stage as 'planning' | 'gathering' | 'fixed' | 'ordered',
    to: 'called-off',
    facts: {
      deposits: left.map(({ householdId, heldMinorUnits }) => ({ householdId, heldMinorUnits })),
      clearingMinorUnits,
      isCancellationRecorded: wish.cancellationNote !== '',
    },
  });
  refuseUnmet(context.actor, missing);
}
