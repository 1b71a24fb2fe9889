import type { Tx } from '@sheafbook/db';
import { carriedBy, metOnLine } from '@sheafbook/packing';
import { listLinePours } from './queries-way.ts';

/** What may have got into containers from what ran before on their line, whosever it was; those of no line are left out. */
export async function listMetOnLine(tx: Tx, storehouseId: string, containerIds: readonly string[]) {
  const pours = await listLinePours(tx, storehouseId, containerIds);
  return metOnLine(pours.map((pour) => ({ ...pour, carries: carriedBy(pour) })));
}
