import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { holdDoubts } from './holding.ts';
import { type EverClosed, listSealHolds } from './queries.ts';
import { tellLate } from './telling.ts';

export async function openHoldsOf(tx: Tx, storehouseId: string, held: readonly EverClosed[]) {
  const ids = new Set(held.map(({ containerId }) => containerId));
  return (await listSealHolds(tx, storehouseId, 'open')).filter(({ hold }) => ids.has(hold.containerId));
}

/** What was closed before a failed check and is logged after it joins what that check holds; its owners hear of it, too. */
export async function holdLate(
  tx: Tx,
  context: Context,
  of: { sessionId: string; line: number },
): Promise<void> {
  const { storehouseId } = context.actor;
  const held = await holdDoubts(tx, storehouseId, of);
  if (held.length > 0) await tellLate(tx, context, await openHoldsOf(tx, storehouseId, held));
}
