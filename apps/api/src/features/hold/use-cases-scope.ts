import type { Tx } from '@sheafbook/db';
import { spellCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { endSentence } from '../../platform/end-sentence.ts';
import { listCodes } from '../../platform/list-codes.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { nameOf } from './name.ts';
import { findSameHold, insertHold, listHeld, loadHold, type Scope, type SeenHold } from './queries.ts';
import { type Concerned, listConcerned } from './queries-owners.ts';
import { insertChosen, insertReach } from './queries-reach.ts';
import { refuseUnknown } from './refuse-unknown.ts';
import type { HoldOf, NewHold } from './schema.ts';
import { NAMELESS, tellOwner } from './telling.ts';

/**
 * Puts everything on hold that a recall or a doubt reaches: what is here of it, what was poured out of that, and what comes
 * to be of it later. Each household that has or had some is told of its own, and of nobody else's.
 */
export function beginScopeHold(context: Context, wish: NewHold): Promise<SeenHold> {
  const inside = async (tx: Tx) => {
    await refuseUnknown(tx, context.actor.storehouseId, wish.of);
    return beginScopeHoldInside(tx, context, wish);
  };
  return withTx(context, inside, wish.of.scope === 'place' ? { task: 'hold' } : {});
}

/** The same inside the caller's transaction, for what the caller knows to be here; whoever it acts for needs no duty. */
export async function beginScopeHoldInside(
  tx: Tx,
  context: Context,
  { of, reason }: NewHold,
): Promise<SeenHold> {
  const { storehouseId, personId } = context.actor;
  const scope = scopeOf(of);
  if (of.scope !== 'containers' && (await findSameHold(tx, storehouseId, scope)))
    throw new Problem('already-on-hold');
  const hold = await insertHold(tx, {
    ...scope,
    ...{ storehouseId, reason, heldBy: personId, heldAt: context.now() },
  });
  if (of.scope === 'containers') await insertChosen(tx, hold, of.containerIds);
  if ((await insertReach(tx, hold)) === 0) throw new Problem('nothing-to-hold');
  const seen = await loadHold(tx, storehouseId, hold.holdId);
  await tellConcerned(tx, context, seen);
  return seen;
}

/** Of these containers, those that no standing hold has for the very same reason. */
export async function listNotHeldFor(
  tx: Tx,
  storehouseId: string,
  { containerIds, reason }: { containerIds: readonly string[]; reason: string },
): Promise<string[]> {
  const found = await listHeld(tx, storehouseId, containerIds);
  const held = new Set(found.filter((row) => row.reason === reason).map(({ vesselId }) => vesselId));
  return containerIds.filter((containerId) => !held.has(containerId));
}

function scopeOf(of: HoldOf): Scope {
  switch (of.scope) {
    case 'session': {
      const { sessionId: packingSessionId, ...window } = of;
      return { ...window, packingSessionId };
    }
    case 'mark':
      return { scope: of.scope, supplierId: of.supplierId, supplierMark: of.mark };
    case 'containers':
      return { scope: of.scope };
    default:
      return of;
  }
}

/** Tells each household of its own part in a hold, but those that know already. */
export async function tellConcerned(
  tx: Tx,
  context: Context,
  seen: SeenHold,
  toldIds: readonly string[] = [],
): Promise<void> {
  for (const concerned of await listConcerned(tx, seen.hold)) {
    if (toldIds.includes(concerned.householdId)) continue;
    const [code] = concerned.codes;
    const nameless = code ? spellCode(code) : NAMELESS;
    await tellOwner(tx, context, {
      ...{ about: nameOf(seen) || nameless, aboutEs: nameOf(seen, 'es') || nameless },
      ...{ buyId: null, hold: seen.hold, kind: 'held', householdId: concerned.householdId },
      says: wordsOf(endSentence(seen.hold.reason), concerned),
    });
  }
}

function wordsOf(reason: string, { codes, usedGrams }: Concerned): string {
  const named = listCodes(codes.map(spellCode));
  if (codes.length === 0)
    return `Food that you had is on hold: ${reason} By the book you have none of it left. Look whether that is so, eat none of it, and say what became of it.`;
  return usedGrams === 0
    ? `Food that you have is on hold: ${reason} It is in ${named}. Do not eat any of it, open it or give it away until you hear more.`
    : `Food that you have is on hold: ${reason} It is in ${named}. Do not eat any of it, open it or give it away until you hear more. You used some of it before: say what became of it.`;
}
