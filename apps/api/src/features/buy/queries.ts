import type { Tx } from '@sheafbook/db';
import {
  type BuyLineRow,
  type BuyRow,
  buyLines,
  buys,
  type StageMoveRow,
  stageMoves,
} from '@sheafbook/db/tables';
import type { BuyStage } from '@sheafbook/ledger';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, lt } from 'drizzle-orm';
import type { Context } from '../../platform/context.ts';
import { endSentence } from '../../platform/end-sentence.ts';
import { Problem } from '../../platform/problem.ts';
import { writeNotice } from '../notice/queries.ts';
import { noticeOfMove } from './move-notice.ts';
import type { BuyQuery } from './schema.ts';

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

/** The newest first, one row more than the page holds. */
export async function listBuys(tx: Tx, storehouseId: string, query: BuyQuery): Promise<BuyRow[]> {
  const { after, limit, stage } = query;
  return tx
    .select()
    .from(buys)
    .where(
      and(
        eq(buys.storehouseId, storehouseId),
        after === undefined ? undefined : lt(buys.buyId, after),
        stage === undefined ? undefined : eq(buys.stage, stage),
      ),
    )
    .orderBy(desc(buys.buyId))
    .limit(limit + 1);
}

export async function findBuyByName(tx: Tx, storehouseId: string, name: string) {
  const [buy] = await tx
    .select()
    .from(buys)
    .where(and(eq(buys.storehouseId, storehouseId), eq(buys.name, name)));
  return buy;
}

export async function insertBuy(tx: Tx, buy: typeof buys.$inferInsert): Promise<BuyRow> {
  const [row] = await tx.insert(buys).values(buy).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** Changes a locked buy and counts its version on. */
export async function updateBuy(
  tx: Tx,
  buy: BuyRow,
  change: Partial<typeof buys.$inferInsert>,
): Promise<BuyRow> {
  const [row] = await tx
    .update(buys)
    .set({ ...change, version: buy.version + 1 })
    .where(isThis(buy.storehouseId, buy.buyId))
    .returning();
  assert(row, 'the buy was locked before');
  return row;
}

export async function listBuyLines(tx: Tx, storehouseId: string, buyId: string): Promise<BuyLineRow[]> {
  return tx
    .select()
    .from(buyLines)
    .where(and(eq(buyLines.storehouseId, storehouseId), eq(buyLines.buyId, buyId)))
    .orderBy(buyLines.position);
}

export async function insertBuyLines(
  tx: Tx,
  lines: readonly (typeof buyLines.$inferInsert)[],
): Promise<void> {
  if (lines.length > 0) await tx.insert(buyLines).values([...lines]);
}

/** Changes a line of a locked buy and counts its version on. */
export async function updateBuyLine(
  tx: Tx,
  line: BuyLineRow,
  change: Partial<typeof buyLines.$inferInsert>,
): Promise<BuyLineRow> {
  const [row] = await tx
    .update(buyLines)
    .set({ ...change, version: line.version + 1 })
    .where(isLine(line))
    .returning();
  assert(row, 'the line was read under the lock of its buy');
  return row;
}

export async function deleteBuyLine(tx: Tx, line: BuyLineRow): Promise<void> {
  await tx.delete(buyLines).where(isLine(line));
}

const isLine = ({ storehouseId, buyLineId }: BuyLineRow) =>
  and(eq(buyLines.storehouseId, storehouseId), eq(buyLines.buyLineId, buyLineId));

/** Every move of a buy's stage in the order in which they were made. */
export async function listStageMoves(tx: Tx, storehouseId: string, buyId: string): Promise<StageMoveRow[]> {
  return tx
    .select()
    .from(stageMoves)
    .where(and(eq(stageMoves.storehouseId, storehouseId), eq(stageMoves.buyId, buyId)))
    .orderBy(asc(stageMoves.stageMoveId));
}

/** Moves a locked buy one stage on, writes down who did it and tells whom it concerns. The caller checked the guards. */
export async function moveStage(
  tx: Tx,
  context: Context,
  move: { buy: BuyRow; to: BuyStage; reason?: string; set?: Partial<typeof buys.$inferInsert> },
): Promise<BuyRow> {
  const { buy, to, reason = '', set = {} } = move;
  const { storehouseId, personId } = context.actor;
  const moved = await updateBuy(tx, buy, { ...set, stage: to });
  await tx.insert(stageMoves).values({
    storehouseId,
    buyId: buy.buyId,
    fromStage: buy.stage,
    toStage: to,
    reason,
    personId,
    movedAt: context.now(),
  });
  const notice = noticeOfMove(buy.stage, moved, { reason: endSentence(reason), actor: context.actor });
  if (notice) await writeNotice(tx, context, notice);
  return moved;
}
