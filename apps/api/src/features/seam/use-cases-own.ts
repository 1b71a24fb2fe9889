import type { Tx } from '@sheafbook/db';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listOwnDoubts } from './queries-own.ts';
import { listReCanned } from './queries-re-can.ts';

/**
 * What of a household's own containers is in doubt, or was answered for and still asks for something: bring it back, eat it now,
 * throw it away. What passed is no longer among it; what went into a new container leads there.
 */
export function readOwnDoubts(context: Context) {
  return withTx(context, async (tx) => {
    const doubts = await listDoubtsOf(tx, context.actor.storehouseId, householdOf(context));
    await noteHelpersRead(tx, context, 'containers in doubt');
    return doubts;
  });
}
export type OwnDoubts = Awaited<ReturnType<typeof readOwnDoubts>>;

/** The same inside a transaction of the household's own. */
export async function listDoubtsOf(tx: Tx, storehouseId: string, householdId: string) {
  const doubts = await listOwnDoubts(tx, storehouseId, householdId);
  if (doubts.length === 0) return [];
  const moved = await listReCanned(
    tx,
    storehouseId,
    doubts.map(({ hold }) => hold.containerId),
  );
  // A container that two checks put in doubt stands there once, as the later one has it.
  const once = new Map(doubts.map((doubt) => [doubt.hold.containerId, doubt]));
  return [...once.values()]
    .filter(({ hold }) => hold.disposition !== 'release')
    .map((doubt) => ({
      ...doubt,
      newCode: moved.find(({ reCan }) => reCan.oldContainerId === doubt.hold.containerId)?.newCode ?? null,
    }))
    .filter(({ grams, newCode }) => grams > 0 || newCode !== null);
}
