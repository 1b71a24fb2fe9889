import type { Tx } from '@sheafbook/db';
import type { BuyRow, DepositAskRow, RulesRow } from '@sheafbook/db/tables';
import { depositAccount, depositForfeited, depositRefunded, type MovementDraft } from '@sheafbook/ledger';
import { depositMinorUnits } from '@sheafbook/sharing';
import { currencyExponent } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForUpdate, requireStage } from '../buy/queries.ts';
import { listDepositsOfBuy, loadBalance } from '../money/queries.ts';
import {
  deleteDepositAsks,
  findDepositAsk,
  insertDepositAsks,
  listDepositAsks,
  updateDepositAsk,
} from './queries.ts';
import type { DepositWaiver } from './schema.ts';

export type HouseholdEstimate = { readonly householdId: string; readonly estimateMinorUnits: number };

/**
 * Asks each household with a promise for its deposit, inside the caller's transaction. A household that was asked
 * before, because somebody else withdrew since, is never asked for more than it was; one without a promise any more is
 * not asked at all.
 */
export async function askDeposits(
  tx: Tx,
  context: Context,
  { buy, rules, estimates }: { buy: BuyRow; rules: RulesRow; estimates: readonly HouseholdEstimate[] },
): Promise<void> {
  const { storehouseId, currency } = context.actor;
  const { buyId } = buy;
  const before = new Map(
    (await listDepositAsks(tx, storehouseId, buyId)).map((ask) => [ask.householdId, ask]),
  );
  const asked = (estimate: number) =>
    depositMinorUnits(estimate, rules.depositPercent, currencyExponent(currency));
  for (const { householdId, estimateMinorUnits } of estimates) {
    const ask = before.get(householdId);
    const askedMinorUnits = asked(estimateMinorUnits);
    if (!ask) continue;
    const lower = Math.min(askedMinorUnits, ask.askedMinorUnits);
    await updateDepositAsk(tx, ask, { estimateMinorUnits, askedMinorUnits: lower });
  }
  const added = estimates.filter(({ householdId }) => !before.has(householdId));
  await insertDepositAsks(
    tx,
    added.map(({ householdId, estimateMinorUnits }) => ({
      storehouseId,
      buyId,
      householdId,
      estimateMinorUnits,
      askedMinorUnits: asked(estimateMinorUnits),
      dueOn: buy.orderOn,
    })),
  );
  const promised = new Set(estimates.map((estimate) => estimate.householdId));
  const householdIds = [...before.keys()].filter((householdId) => !promised.has(householdId));
  await deleteDepositAsks(tx, storehouseId, { buyId, householdIds });
}

/** What a household has on deposit for a buy. */
export async function loadHeldDeposit(
  tx: Tx,
  storehouseId: string,
  of: { householdId: string; buyId: string },
): Promise<number> {
  return -(await loadBalance(tx, storehouseId, depositAccount(of)));
}

/** Puts every deposit of a buy back on the balance of its household, except those of households with a promise. */
export async function returnDeposits(
  tx: Tx,
  context: Context,
  { buyId, except }: { buyId: string; except: readonly string[] },
): Promise<void> {
  const rows = await listDepositsOfBuy(tx, context.actor.storehouseId, buyId);
  const idle = rows.filter(
    ({ householdId, heldMinorUnits }) => heldMinorUnits > 0 && !except.includes(householdId),
  );
  const drafts = idle.flatMap(({ householdId, heldMinorUnits: amountMinorUnits }) =>
    depositRefunded({ householdId, buyId, amountMinorUnits, to: 'household' }),
  );
  if (drafts.length === 0) return;
  const note = 'nothing is promised any more';
  await postEntry(tx, context, { what: 'deposit-refunded', onDay: todayOf(context), drafts, buyId, note });
}

/**
 * Settles the deposit of a household that withdraws before the order: so much stays with the buy for the harm to the
 * others (job map 4.7), the rest goes on its balance. Nothing held posts nothing.
 */
export async function settleWithdrawnDeposit(
  tx: Tx,
  context: Context,
  of: { householdId: string; buyId: string; withheldMinorUnits: number; refundMinorUnits: number },
): Promise<void> {
  const { householdId, buyId, withheldMinorUnits, refundMinorUnits } = of;
  const drafts: MovementDraft[] = [];
  if (withheldMinorUnits > 0)
    drafts.push(...depositForfeited({ householdId, buyId, amountMinorUnits: withheldMinorUnits }));
  if (refundMinorUnits > 0)
    drafts.push(
      ...depositRefunded({ householdId, buyId, amountMinorUnits: refundMinorUnits, to: 'household' }),
    );
  if (drafts.length === 0) return;
  const isForAnother = context.actor.householdId !== householdId;
  await postEntry(tx, context, {
    what: 'deposit-settled',
    onDay: todayOf(context),
    drafts,
    buyId,
    note: 'withdrew before the order',
    ...(isForAnother ? { enteredFor: householdId } : {}),
  });
}

export type OwnDeposit = { readonly ask: DepositAskRow | undefined; readonly heldMinorUnits: number };

/** A household's own deposit on a buy. */
export function readOwnDeposit(context: Context, buyId: string): Promise<OwnDeposit> {
  const { storehouseId, householdId } = context.actor;
  if (householdId === null) throw new Problem('household-needed');
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    await noteHelpersRead(tx, context, 'deposits');
    const ask = await findDepositAsk(tx, storehouseId, { buyId, householdId });
    return { ask, heldMinorUnits: await loadHeldDeposit(tx, storehouseId, { householdId, buyId }) };
  });
}

/** Lets a household off its deposit, with a reason that only the treasurer and the household itself see. */
export function waiveDeposit(context: Context, buyId: string, wish: DepositWaiver): Promise<DepositAskRow> {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    requireStage(buy, 'fixed');
    const { householdId } = wish;
    const ask = await findDepositAsk(tx, storehouseId, { buyId, householdId });
    if (!ask) throw new Problem('thing-not-found', { thing: 'deposit' });
    if (ask.waivedBy !== null)
      throw new Problem('already-there', { detail: 'This deposit is waived already.' });
    await notePrivateRead(tx, context, {
      householdIds: [householdId],
      what: 'waiver',
      purpose: 'waiving a deposit',
    });
    return updateDepositAsk(tx, ask, { waivedBy: personId, waiverReason: wish.reason });
  });
}
