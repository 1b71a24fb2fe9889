import type { Tx } from '@sheafbook/db';
import { ownerChanged } from '@sheafbook/ledger';
import { type MixedShare, mixMoves } from '@sheafbook/packing';
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockBuyForShare } from '../buy/queries.ts';
import { refuseHeld } from '../hold/queries.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { planDay } from './plan-day.ts';
import { lockSession } from './queries.ts';
import { insertMix, listBroughtLots, listPieces, lockMix, markMixUndone } from './queries-mixing.ts';
import type { MixPosting, MixUndoing } from './schema.ts';
import { requireSessionStage } from './stage.ts';

/**
 * Books the grams that change hands in a mixed run, as one entry in the bags where they lie: they add up to nothing, and whoever
 * gave or got is told. What was shown is what is booked, or nothing. No money follows: see DEVELOPERS.md. The session is locked
 * first, as by whoever brings a bag or pours.
 */
export function postMix(context: Context, sessionId: string, { mixId, seen }: MixPosting) {
  const { storehouseId, personId } = context.actor;
  const work = async (tx: Tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'running');
    const { mixes, wishes } = await planDay(tx, context, session, { purpose: 'mixed run' });
    const mix = mixes.find((one) => one.mixId === mixId);
    if (!mix) throw new Problem('thing-not-found', { thing: 'mixed run' });
    if (mix.posted) throw new Problem('already-there', { detail: 'This has changed hands already.' });
    if (mix.seen !== seen) throw new Problem('mix-moved');
    const wish = wishes.find((row) => row.wish.packingWishId === mixId)?.wish;
    assert(wish, 'a mix has the id of a wish in it');
    const { lotId, run } = mix;
    const householdIds = run.shares.map(({ householdId }) => householdId);
    const buys = new Set(
      (await listPieces(tx, storehouseId, { lotId, householdIds })).map(({ buyId }) => buyId),
    );
    for (const buyId of [...buys].toSorted()) await lockBuyForShare(tx, storehouseId, buyId);
    const pieces = await listPieces(tx, storehouseId, { lotId, householdIds });
    const moves = mixMoves(run.shares, pieces);
    if (moves.length === 0) throw new Problem('nothing-to-post', { detail: 'Nothing changes hands here.' });
    await refuseHeld(tx, storehouseId, [...new Set(moves.map(({ bagId }) => bagId))]);
    const entry = await postEntry(tx, context, {
      ...{ what: 'mixed-run', onDay: todayOf(context), subjectId: sessionId },
      drafts: moves.flatMap(({ bagId, giverId, takerId, grams }) =>
        ownerChanged({
          ...{ lotId, vesselId: bagId, fromOwnerId: giverId, toOwnerId: takerId, amountGrams: grams },
        }),
      ),
    });
    const { packingMixId } = await insertMix(tx, {
      ...{ storehouseId, packingMixId: newId(context), packingSessionId: sessionId, line: mix.line, lotId },
      ...{ containerKindId: wish.containerKindId, treatment: wish.treatment, gramsEach: mix.gramsEach },
      ...{ wishIds: [...mix.wishIds], shares: run.shares, entryId: entry.entryId },
      ...{ postedBy: personId, postedAt: context.now() },
    });
    await tellShares(tx, context, { name: session.name, sessionId, shares: run.shares });
    return { packingMixId, entryId: entry.entryId, entryNo: entry.entryNo };
  };
  return withTx(context, work, { task: 'packing' });
}

async function tellShares(
  tx: Tx,
  context: Context,
  { name: about, sessionId, shares }: { name: string; sessionId: string; shares: readonly MixedShare[] },
): Promise<void> {
  for (const { householdId, putInGrams, containers, leftGrams, gotGrams } of shares) {
    const says =
      gotGrams < 0
        ? `Your food runs together with others’: of the ${putInGrams} g that you put in, ${-gotGrams} g went to others. Yours: containers ${containers}, left over ${leftGrams} g.`
        : `Your food runs together with others’: to the ${putInGrams} g that you put in, ${gotGrams} g came from others. Yours: containers ${containers}, left over ${leftGrams} g.`;
    await writeNotice(tx, context, {
      ...{ kind: 'packing', about, says, audience: { to: 'household', householdId } },
      path: `/packing-sessions/${sessionId}`,
    });
  }
}

/** Gives the grams back, as long as nobody of the mix has brought a bag of the lot to the line. */
export function undoMix(context: Context, sessionId: string, { packingMixId, reason }: MixUndoing) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'running');
    const mix = await lockMix(tx, storehouseId, { sessionId, packingMixId });
    if (mix.undoneEntryId !== null) throw new Problem('already-reversed');
    const shares = mix.shares as MixedShare[];
    const brought = await listBroughtLots(tx, storehouseId, sessionId);
    const isHere = shares.some(({ householdId }) =>
      brought.some((bag) => bag.householdId === householdId && bag.lotId === mix.lotId),
    );
    if (isHere)
      throw new Problem('cannot-reverse', {
        detail: 'A bag of this lot stands at the line already, counted as it is.',
      });
    const entry = await reverseEntry(tx, context, {
      ...{ what: 'mixed-run-undone', onDay: todayOf(context), reversesId: mix.entryId },
      ...{ subjectId: sessionId, note: reason },
    });
    await markMixUndone(tx, mix, entry.entryId);
    for (const { householdId } of shares)
      await writeNotice(tx, context, {
        ...{ kind: 'packing', about: session.name, audience: { to: 'household', householdId } },
        says: 'Your food no longer runs together with others’: what had changed hands went back.',
        path: `/packing-sessions/${sessionId}`,
      });
    return { entryId: entry.entryId, entryNo: entry.entryNo };
  });
}
