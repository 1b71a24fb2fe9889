import type { Tx } from '@sheafbook/db';
import { discarded } from '@sheafbook/ledger';
import { spellCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { MOST_CODES } from '../../platform/list-codes.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadOutsideVessels } from '../storehouse/queries.ts';
import {
  listChecks,
  listContents,
  listMachines,
  listSealHolds,
  type SealHeld,
  settleHolds,
} from './queries.ts';
import type { Settling } from './schema.ts';
import { tellAnswer } from './telling.ts';
import { windowsOf } from './windows.ts';

/**
 * Answers for containers in doubt. They are let go as good only while their machine runs again and once they passed; what is
 * thrown away leaves its household's account. Each owner is told what to do.
 */
export function settleSuspects(context: Context, { containerIds, disposition, note }: Settling) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const open = (await listSealHolds(tx, storehouseId, 'open')).filter(({ hold }) =>
      containerIds.includes(hold.containerId),
    );
    const found = new Set(open.map(({ hold }) => hold.containerId));
    if (containerIds.some((id) => !found.has(id))) throw new Problem('thing-not-found', { thing: 'hold' });
    if (disposition === 'release') await refuseUnpassed(tx, storehouseId, open);
    const answer = { disposition, note, settledBy: personId, settledAt: context.now() };
    const settled = await settleHolds(tx, storehouseId, [...found], answer);
    if (disposition === 'discard') await discardContents(tx, context, { containerIds: [...found], note });
    await tellAnswer(tx, context, { open, disposition, note });
    return { settled, holds: await listSealHolds(tx, storehouseId, 'open') };
  });
}

async function refuseUnpassed(tx: Tx, storehouseId: string, open: readonly SealHeld[]): Promise<void> {
  const machines = await listMachines(tx, storehouseId);
  const out = machines.filter(({ outSince }) => outSince !== null);
  if (open.some(({ check }) => out.some(({ sealMachineId }) => sealMachineId === check.sealMachineId)))
    throw new Problem('machine-is-out');
  const asked = new Set(open.map(({ hold }) => hold.containerId));
  const unpassed: string[] = [];
  for (const sessionId of new Set(open.map(({ check }) => check.packingSessionId))) {
    const holds = await listSealHolds(tx, storehouseId, { sessionId });
    const windows = windowsOf(holds, await listChecks(tx, storehouseId, sessionId), machines);
    for (const { held, state } of windows.flatMap(({ suspects }) => suspects))
      if (asked.has(held.hold.containerId) && state !== 'cleared') unpassed.push(spellCode(held.code));
  }
  if (unpassed.length > 0)
    throw new Problem('still-in-doubt', {
      detail: `${unpassed.slice(0, MOST_CODES).join(', ')} did not pass. Open the next one of the window first; what was opened or failed is re-canned, eaten now or thrown away.`,
      containers: unpassed,
    });
}

/** What is thrown away is its owner's, and goes out of its owner's account. */
async function discardContents(
  tx: Tx,
  context: Context,
  { containerIds, note }: { containerIds: readonly string[]; note: string },
): Promise<void> {
  const { storehouseId } = context.actor;
  const outsideVesselId = (await loadOutsideVessels(tx, storehouseId))('discarded');
  for (const { containerId, lotId, householdId, grams } of await listContents(
    tx,
    storehouseId,
    containerIds,
  )) {
    if (householdId === null) continue; // a line pours for households only
    const leaving = { lotId, fromVesselId: containerId, outsideVesselId, ownerId: householdId };
    await postEntry(tx, context, {
      ...{ what: 'container-discarded', onDay: todayOf(context), subjectId: containerId, note },
      ...{ enteredFor: householdId, drafts: discarded({ ...leaving, amountGrams: grams }) },
    });
  }
}
