import type { Tx } from '@sheafbook/db';
import type { HoldRow } from '@sheafbook/db/tables';
import { discarded } from '@sheafbook/ledger';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { whoseStock } from '../../platform/whose-stock.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadHouseOwners, loadOutsideVessels } from '../storehouse/queries.ts';
import { mayHold } from './policy.ts';
import { endHoldsOfEmpty, endHoldsWithNothing, listHoldsOfKitchen, loadHold, lockHold } from './queries.ts';
import { listPartsOf } from './queries-notice.ts';
import {
  findAnswer,
  isInHold,
  listHeldOf,
  listInRecall,
  listPantriesIn,
  listVesselsWithSome,
  type OwnHeld,
  upsertAnswer,
} from './queries-recall.ts';
import { listSlips } from './queries-slip.ts';
import type { Destruction, HoldAnswer } from './schema.ts';

/** How far a recall has come: each household that was told, what it said, and the pantries to ring up. */
export function readStanding(context: Context, holdId: string) {
  const { storehouseId } = context.actor;
  const inside = async (tx: Tx) => {
    const { hold } = await loadHold(tx, storehouseId, holdId);
    const households = await listInRecall(tx, hold);
    const householdIds = households.map(({ householdId }) => householdId);
    await notePrivateRead(tx, context, { householdIds, what: 'notices', purpose: 'recall' });
    return {
      ...{ households, pantries: await listPantriesIn(tx, hold), slips: await listSlips(tx, hold) },
      parts: await listPartsOf(tx, hold, householdIds),
    };
  };
  return withTx(context, inside, { task: 'notice' });
}

/** What one's own household has of held food, and what it said became of the rest. */
export function readOwnPart(context: Context, holdId: string) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    await noteHelpersRead(tx, context, 'holds');
    const { hold } = await loadHold(tx, storehouseId, holdId);
    return {
      isConcerned: await isInHold(tx, hold, householdId),
      held: await listHeldOf(tx, hold, [householdId]),
      answer: await findAnswer(tx, hold, householdId),
      slip: await findOwnSlip(tx, hold, householdId),
    };
  });
}

/** A household says that it has some, ate it, or gave it away. It may say otherwise later; only the last word is kept. */
export function answerRecall(context: Context, holdId: string, said: HoldAnswer) {
  const { storehouseId, personId: answeredBy } = context.actor;
  const householdId = householdOf(context);
  for (const field of ['eatenOn', 'givenOn'] as const)
    if ((said[field] ?? '') > todayOf(context))
      throw fieldProblem('invalid-input', field, 'This day is still to come.');
  return withTx(context, async (tx) => {
    const { hold } = await loadHold(tx, storehouseId, holdId);
    if (!(await isInHold(tx, hold, householdId)))
      throw new Problem('thing-not-found', { detail: 'Nothing of this was ever yours.' });
    const answeredAt = context.now();
    await upsertAnswer(tx, { storehouseId, holdId, householdId, ...said, answeredBy, answeredAt });
    return {
      isConcerned: true,
      held: await listHeldOf(tx, hold, [householdId]),
      answer: { ...said, answeredAt },
      slip: await findOwnSlip(tx, hold, householdId),
    };
  });
}

const findOwnSlip = async (tx: Tx, hold: HoldRow, householdId: string) =>
  (await listSlips(tx, hold)).find((slip) => slip.householdId === householdId);

/**
 * Throws away, with its reason and in one step, all that one's household has of held food, or all that is the store's or
 * nobody's yet. What is another household's stays on hold until that one does the same.
 */
export function destroyHeld(context: Context, holdId: string, { of, reason }: Destruction) {
  const { storehouseId } = context.actor;
  const householdId = whoseStock(context, of, mayHold);
  return withTx(context, async (tx) => {
    const hold = await lockHold(tx, storehouseId, holdId);
    if (hold.releasedAt) throw new Problem('hold-ended');
    const { commonId, unassignedId } = await loadHouseOwners(tx, storehouseId);
    const held = await listHeldOf(tx, hold, householdId === null ? [commonId, unassignedId] : [householdId]);
    if (held.length === 0)
      throw new Problem('nothing-to-hold', { detail: 'Nothing of it is there to throw away.' });
    await discardAll(tx, context, { held, reason });
    const end = { finding: reason, at: context.now() };
    await endHoldsOfEmpty(tx, { storehouseId, vesselIds: await emptied(tx, hold, held) }, end);
    const kitchens = held.filter(({ vesselKind }) => vesselKind === 'kitchen');
    const lotIds = kitchens.map(({ lotId }) => lotId);
    const others =
      householdId === null ? [] : await listHoldsOfKitchen(tx, { storehouseId, householdId, lotIds });
    await endHoldsWithNothing(tx, { storehouseId, holdIds: [holdId, ...others] }, end);
    return {
      grams: held.reduce((sum, { grams }) => sum + grams, 0),
      codes: held.flatMap(({ code }) => (code === '' ? [] : [code])),
    };
  });
}

async function discardAll(
  tx: Tx,
  context: Context,
  { held, reason }: { held: readonly OwnHeld[]; reason: string },
): Promise<void> {
  const outsideVesselId = (await loadOutsideVessels(tx, context.actor.storehouseId))('discarded');
  for (const { vesselId, vesselKind, lotId, buyId, ownerId, grams } of held)
    await postEntry(tx, context, {
      ...{ what: `${vesselKind}-discarded`, onDay: todayOf(context), note: reason },
      subjectId: vesselKind === 'kitchen' ? lotId : vesselId,
      ...(buyId === null ? {} : { buyId }),
      drafts: discarded({ lotId, fromVesselId: vesselId, outsideVesselId, ownerId, amountGrams: grams }),
    });
}

/** Vessels in which nobody has anything of it any more; a bag may still hold a neighbour's part. */
async function emptied(
  tx: Tx,
  hold: Parameters<typeof listHeldOf>[1],
  held: readonly OwnHeld[],
): Promise<string[]> {
  const still = new Set(await listVesselsWithSome(tx, hold));
  return [...new Set(held.map(({ vesselId }) => vesselId))].filter((vesselId) => !still.has(vesselId));
}
