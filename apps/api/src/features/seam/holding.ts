import type { Tx } from '@sheafbook/db';
import type { SealCheckRow } from '@sheafbook/db/tables';
import { doubtsAt } from './moments.ts';
import {
  type EverClosed,
  insertHolds,
  listChecks,
  listEverClosed,
  listMachines,
  listSealHolds,
} from './queries.ts';

type Line = { readonly sessionId: string; readonly line: number };

/**
 * Holds what the failed checks of a line put in doubt and nothing holds yet: after a check, and after a pour that waited, since
 * either may tell more of what an earlier check found. What was answered for is held anew by a check that is new only.
 */
export async function holdDoubts(
  tx: Tx,
  storehouseId: string,
  { sessionId, line, made }: Line & { readonly made?: SealCheckRow },
): Promise<readonly EverClosed[]> {
  const checks = await listChecks(tx, storehouseId, sessionId);
  if (checks.every((check) => check.passed || check.line !== line)) return [];
  const doubts = doubtsAt(line, checks, await listMachines(tx, storehouseId));
  const closed = (await listEverClosed(tx, storehouseId, { sessionId, line })).filter(
    ({ isUndone }) => !isUndone,
  );
  const open = idsOf(await listSealHolds(tx, storehouseId, 'open'));
  const ever = idsOf(await listSealHolds(tx, storehouseId, { sessionId }));
  const isFree = ({ containerId }: EverClosed, { sealCheckId }: SealCheckRow) =>
    sealCheckId === made?.sealCheckId ? !open.has(containerId) : !ever.has(containerId);
  const found = closed.flatMap((one) => {
    const doubt = doubts.find(({ check, has }) => isFree(one, check) && has(one));
    return doubt ? [{ one, sealCheckId: doubt.check.sealCheckId }] : [];
  });
  await insertHolds(
    tx,
    found.map(({ one: { containerId }, sealCheckId }) => ({ storehouseId, containerId, sealCheckId })),
  );
  return found.map(({ one }) => one);
}

const idsOf = (holds: readonly { hold: { containerId: string } }[]) =>
  new Set(holds.map(({ hold }) => hold.containerId));
