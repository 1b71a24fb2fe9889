import type { Tx } from '@sheafbook/db';
import { type BuyLineRow, type BuyRow, buyLines, buys, stageMoves } from '@sheafbook/db/tables';
import type { BuyStage } from '@sheafbook/ledger';
import { assert } from '@sheafbook/units';
import { and, eq } from 'drizzle-orm';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, buyId: string) =>
  and(eq(buys.storehouseId, storehouseId), eq(buys.buyId, buyId));

export async function loadBuy(tx: Tx, storehouseId: string, buyId: string): Promise<BuyRow> {
  return found(await tx.select().from(buys).where(isThis(storehouseId, buyId)));
}

/** To post or pledge in a buy: many may do so at once, but nobody can move its stage meanwhile (ledger-notes 6.16). */
export async function lockBuyForShare(tx: Tx, storehouseId: string, buyId: string): Promise<BuyRow> {
  return found(await tx.select().from(buys).where(isThis(storehouseId, buyId)).for('share'));
}

/** To move a buy's stage, or to change what its guards read: alone with it. */
export async function lockBuyForUpdate(tx: Tx, storehouseId: string, buyId: string): Promise<BuyRow> {
  return found(await tx.select().from(buys).where(isThis(storehouseId, buyId)).for('update'));
}

function found([buy]: BuyRow[]): BuyRow {
  if (!buy) throw new Problem('thing-not-found', { thing: 'buy' });
  return buy;
}

/** Refuses unless the buy is at one of these stages, and says where it is. */
export function requireStage(buy: BuyRow, ...allowed: readonly BuyStage[]): void {
  if (!allowed.some((stage) => stage === buy.stage))
    throw new Problem('buy-stage-wrong', {
      detail: `The buy is ${buy.stage}; this can be done while it is ${allowed.join(' or ')}.`,
      stage: buy.stage,
      allowed,
    });
}

export async function listBuyLines(tx: Tx, storehouseId: string, buyId: string): Promise<BuyLineRow[]> {
  return tx
    .select()
    .from(buyLines)
    .where(and(eq(buyLines.storehouseId, storehouseId), eq(buyLines.buyId, buyId)))
    .orderBy(buyLines.position);
}

/** Moves a locked buy one stage on and writes down who did it. The guards were checked by the caller. */
export async function moveStage(
  tx: Tx,
  context: Context,
  move: { buy: BuyRow; to: BuyStage; reason?: string; set?: Partial<typeof buys.$inferInsert> },
): Promise<BuyRow> {
  const { buy, to, reason = '', set = {} } = move;
  const { storehouseId, personId } = context.actor;
  const [moved] = await tx
    .update(buys)
    .set({ ...set, stage: to, version: buy.version + 1 })
    .where(isThis(storehouseId, buy.buyId))
    .returning();
  assert(moved, 'the buy was locked before');
  await tx.insert(stageMoves).values({
    storehouseId,
    buyId: buy.buyId,
    fromStage: buy.stage,
    toStage: to,
    reason,
    personId,
    movedAt: context.now(),
  });
  return moved;
}
