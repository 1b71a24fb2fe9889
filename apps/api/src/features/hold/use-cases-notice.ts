import type { Tx } from '@sheafbook/db';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadHousehold } from '../household/queries.ts';
import { listCoordinators } from '../order/queries.ts';
import { loadPantry } from '../pantry/queries.ts';
import { mayHold } from './policy.ts';
import { loadHold, type SeenHold } from './queries.ts';
import { type GivenPart, listGivenParts, listNoticeParts, type NoticePart } from './queries-notice.ts';
import { isInHold } from './queries-recall.ts';

/** Whom a recall notice is for; without either it is one's own household. */
export type NoticeFor = { readonly householdId?: string | undefined; readonly pantryId?: string | undefined };

/**
 * What a recall notice for one household tells: what it has or had of it, and nothing of anybody else's. Another's is for
 * those who handle holds, who bring it to whom no screen has reached; that is written down.
 */
export function readHouseholdNotice(context: Context, holdId: string, householdId: string | undefined) {
  const { actor } = context;
  const isOwn = householdId === undefined || householdId === actor.householdId;
  if (!isOwn && !mayHold(actor)) throw new Problem('not-your-household');
  const whose = isOwn ? householdOf(context) : householdId;
  const inside = async (tx: Tx) => {
    const seen = await loadStanding(tx, actor.storehouseId, holdId);
    const parts = await loadHouseholdParts(tx, seen, whose);
    if (isOwn) await noteHelpersRead(tx, context, 'holds');
    else await notePrivateRead(tx, context, { householdIds: [whose], what: 'notices', purpose: 'recall' });
    return {
      ...(await withContacts(tx, seen)),
      household: await loadHousehold(tx, actor.storehouseId, whose),
      parts,
    };
  };
  return withTx(context, inside, isOwn ? {} : { task: 'notice' });
}

/** What a recall notice for a pantry tells: each container that went there, and by which manifest. */
export function readPantryNotice(context: Context, holdId: string, pantryId: string) {
  const { storehouseId } = context.actor;
  if (!mayHold(context.actor)) throw new Problem('duty-missing');
  return withTx(context, async (tx) => {
    const seen = await loadStanding(tx, storehouseId, holdId);
    const parts = await loadPantryParts(tx, seen, pantryId);
    const { pantry } = await loadPantry(tx, storehouseId, pantryId);
    return {
      ...(await withContacts(tx, seen)),
      pantry,
      parts,
    };
  });
}

/** A released hold warns of nothing any more; one that ended with what was thrown away still asks what became of the rest. */
export async function loadStanding(tx: Tx, storehouseId: string, holdId: string): Promise<SeenHold> {
  const seen = await loadHold(tx, storehouseId, holdId);
  if (seen.hold.releasedBy !== null) throw new Problem('hold-ended');
  return seen;
}

const withContacts = async (tx: Tx, seen: SeenHold) => ({
  seen,
  coordinators: await listCoordinators(tx, seen.hold.storehouseId),
});

/** What a household's notice names, whoever reads it; its own page asks the same whether any of it is or was theirs. */
export async function loadHouseholdParts(
  tx: Tx,
  { hold }: SeenHold,
  householdId: string,
): Promise<NoticePart[]> {
  if (!(await isInHold(tx, hold, householdId)))
    throw new Problem('thing-not-found', { detail: 'Nothing of this was ever theirs.' });
  return listNoticeParts(tx, hold, householdId);
}

/** What a pantry's notice names. A pantry that is not here is told apart from one that got none of it. */
export async function loadPantryParts(tx: Tx, { hold }: SeenHold, pantryId: string): Promise<GivenPart[]> {
  await loadPantry(tx, hold.storehouseId, pantryId);
  const parts = await listGivenParts(tx, hold, pantryId);
  if (parts.length === 0) throw new Problem('thing-not-found', { detail: 'Nothing of this went there.' });
  return parts;
}
