import type { Tx } from '@sheafbook/db';
import { privateReads } from '@sheafbook/db/tables';
import type { Context } from './context.ts';

/**
 * Records that someone reads a private datum of other households: who, what, when and why. Reading one's own is
 * nobody's business. Called in the same transaction as the read itself.
 */
export async function notePrivateRead(
  tx: Tx,
  { actor, now }: Context,
  read: { householdIds: readonly string[]; what: string; purpose: string },
): Promise<void> {
  const ownId = actor.isHelping ? null : actor.householdId;
  const others = [...new Set(read.householdIds)].filter((householdId) => householdId !== ownId);
  if (others.length === 0) return;
  await tx.insert(privateReads).values(
    others.map((householdId) => ({
      storehouseId: actor.storehouseId,
      householdId,
      personId: actor.personId,
      what: read.what,
      purpose: read.purpose,
      readAt: now(),
    })),
  );
}

/** Whoever helps a household sees what is its own; the household finds that in its record. */
export async function noteHelpersRead(tx: Tx, context: Context, what: string): Promise<void> {
  const { isHelping, householdId } = context.actor;
  if (!isHelping || householdId === null) return;
  await notePrivateRead(tx, context, { householdIds: [householdId], what, purpose: 'helping' });
}
