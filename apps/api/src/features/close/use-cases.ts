import type { Tx } from '@sheafbook/db';
import type { BuyRow } from '@sheafbook/db/tables';
import { type ClosingFacts, type Missing, stageGuards } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForUpdate, moveStage, requireStage } from '../buy/queries.ts';
import { presentMissing, refuseUnmet } from '../buy/use-cases.ts';
import { listUnbilledSuppliers, loadClearing } from '../charge/queries.ts';
import { areChargesBehind } from '../charge/use-cases.ts';
import { listDepositsOfBuy } from '../money/queries.ts';
import { seesDeposits } from './policy.ts';
import { listAccountsToClose, listOpenClaimIds, sumUnassignedGrams, updateAccountClosed } from './queries.ts';

export { mayClose, seesDeposits } from './policy.ts';

export type Closing = {
  readonly buy: BuyRow;
  readonly facts: ClosingFacts;
  readonly missing: readonly Missing[];
  /** The same in words, as far as the actor may see it. */
  readonly shown: ReturnType<typeof presentMissing>;
};

/** Lists exactly what keeps a buy from closing. */
export function readClosing(context: Context, buyId: string): Promise<Closing> {
  return withTx(context, async (tx) => {
    const buy = await loadBuy(tx, context.actor.storehouseId, buyId);
    return lookAtClosing(tx, context, buy);
  });
}

/**
 * Closes a shared-out buy for good. The clearing account and the deposits of the buy are at nothing and, from here,
 * held there by the database.
 */
export function closeBuy(context: Context, buyId: string): Promise<Closing> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    requireStage(buy, 'shared-out');
    const closing = await lookAtClosing(tx, context, buy);
    refuseUnmet(context.actor, closing.missing);
    const closed = await moveStage(tx, context, { buy, to: 'closed' });
    for (const accountId of await listAccountsToClose(tx, storehouseId, buyId))
      await updateAccountClosed(tx, accountId);
    return { ...closing, buy: closed };
  });
}

/** What keeps a buy from closing, and the figures behind it. Whose deposits were looked at is written down. */
export async function lookAtClosing(tx: Tx, context: Context, buy: BuyRow): Promise<Closing> {
  const { actor } = context;
  const { storehouseId } = actor;
  const { buyId } = buy;
  const deposits = await listDepositsOfBuy(tx, storehouseId, buyId);
  const held = deposits.filter((deposit) => deposit.heldMinorUnits !== 0);
  if (seesDeposits(actor))
    await notePrivateRead(tx, context, {
      householdIds: held.map((deposit) => deposit.householdId),
      what: 'deposits',
      purpose: 'closing a buy',
    });
  const facts = {
    supplierIdsWithoutInvoice: await listUnbilledSuppliers(tx, storehouseId, buyId),
    openClaimIds: await listOpenClaimIds(tx, storehouseId, buyId),
    clearingMinorUnits: await loadClearing(tx, storehouseId, buyId),
    deposits: held.map(({ householdId, heldMinorUnits }) => ({ householdId, heldMinorUnits })),
    unassignedGrams: await sumUnassignedGrams(tx, storehouseId, buyId),
  };
  const guards = stageGuards({ from: 'shared-out', to: 'closed', facts });
  const isBehind = buy.stage === 'shared-out' && (await areChargesBehind(tx, context, buy));
  const missing: Missing[] = isBehind ? [...guards, { code: 'charges-behind' }] : guards;
  return { buy, facts, missing, shown: presentMissing(missing, actor) };
}
