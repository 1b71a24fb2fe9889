import type { Tx } from '@sheafbook/db';
import type { BagRow, HoldRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { endSentence } from '../../platform/end-sentence.ts';
import { listCodes } from '../../platform/list-codes.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockBuyForUpdate } from '../buy/queries.ts';
import { nameOf } from './name.ts';
import { mayReleaseTogether } from './policy.ts';
import {
  findBuyOfBag,
  insertHold,
  listDutiesOf,
  listHolds,
  listOpenHolds,
  loadHold,
  lockBagToHold,
  lockHold,
  type SeenHold,
  updateHold,
} from './queries.ts';
import { listConcerned, listOwnersOfLot, listToldOfHold, type OwnerOfLot } from './queries-owners.ts';
import { endVesselsOf, insertReach } from './queries-reach.ts';
import type { HoldFinding, HoldQuery, HoldReason } from './schema.ts';
import { NAMELESS, tellOwner } from './telling.ts';

export { nameOf } from './name.ts';
export { mayHold, mayReleaseTogether } from './policy.ts';
export { presentHold } from './present.ts';
export { tellLateOwners } from './use-cases-late.ts';
export { type NoticeFor, readHouseholdNotice, readPantryNotice } from './use-cases-notice.ts';
export { beginScopeHoldInside, listNotHeldFor } from './use-cases-scope.ts';

/** Stops a bag: nothing leaves it until two people let it go. At any stage, since a recall may come years later. */
export function holdBag(context: Context, bagId: string, { reason }: HoldReason): Promise<SeenHold> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await lockBuyForUpdate(tx, storehouseId, await findBuyOfBag(tx, storehouseId, bagId));
    const bag = await lockBagToHold(tx, storehouseId, bagId);
    if (bag.decision === 'refused')
      throw new Problem('not-enough-left', {
        detail: 'The bag was refused, so there is nothing of it here.',
      });
    if ((await listOpenHolds(tx, storehouseId, [bagId])).length > 0) throw new Problem('bag-already-held');
    const { holdId } = await beginHold(tx, context, { bag, reason });
    return loadHold(tx, storehouseId, holdId);
  });
}

/**
 * Puts a bag on hold inside the caller's transaction, which is alone with its buy and found no hold on it. What was poured
 * out of it is held with it; who has other food of its lot is told too.
 */
export async function beginHold(
  tx: Tx,
  context: Context,
  { bag, reason }: { bag: HeldBag; reason: string },
): Promise<HoldRow> {
  const { storehouseId, personId } = context.actor;
  const { bagId } = bag;
  const hold = await insertHold(tx, { bagId, reason, storehouseId, heldBy: personId, heldAt: context.now() });
  await insertReach(tx, hold);
  for (const owner of await listOwnersOfLot(tx, storehouseId, bag))
    await tellOwner(tx, context, {
      ...{
        about: bag.bagCode,
        aboutEs: bag.bagCode,
        buyId: bag.buyId,
        hold,
        kind: 'held',
        householdId: owner.householdId,
      },
      says: wordsOfHeld(bag.bagCode, endSentence(reason), owner),
    });
  return hold;
}

type HeldBag = Pick<BagRow, 'bagId' | 'bagCode' | 'buyId' | 'lotId'>;

function wordsOfHeld(
  bagCode: string,
  reason: string,
  { isInBag, containerCodes }: Omit<OwnerOfLot, 'householdId'>,
): string {
  const codes = listCodes(containerCodes);
  if (containerCodes.length === 0)
    return `Bag ${bagCode}, in which you have food, is on hold: ${reason} Do not eat from it, open it or give it away until you hear more.`;
  return isInBag
    ? `Bag ${bagCode}, in which you have food, is on hold: ${reason} You have more of the same lot in ${codes}. Do not eat any of it, open it or give it away until you hear more.`
    : `Bag ${bagCode} is on hold: ${reason} You have food of the same lot in ${codes}. Do not eat any of it, open it or give it away until you hear more.`;
}

/** The first of two: writes down what was found and asks for the release. Asking again replaces the finding. */
export function askForRelease(context: Context, holdId: string, { finding }: HoldFinding) {
  const { personId } = context.actor;
  return withOpenHold(context, holdId, async (tx, { hold }) => {
    await updateHold(tx, hold, { finding, releaseAskedBy: personId });
  });
}

/** The second of two, another person, so that both duties were at it: packing lead and coordinator. */
export function agreeToRelease(context: Context, holdId: string) {
  const { storehouseId, personId, duties } = context.actor;
  return withOpenHold(context, holdId, async (tx, seen) => {
    const { hold } = seen;
    if (hold.releaseAskedBy === null)
      throw new Problem('second-login-needed', { detail: 'Nobody has asked for the release yet.' });
    if (hold.releaseAskedBy === personId)
      throw new Problem('second-login-needed', { detail: 'Somebody else must agree to what you found.' });
    const asker = await listDutiesOf(tx, storehouseId, hold.releaseAskedBy);
    if (!mayReleaseTogether(asker, duties))
      throw new Problem('second-login-needed', {
        detail: 'A release takes a packing lead and a coordinator, two different people.',
      });
    const at = context.now();
    await updateHold(tx, hold, { releasedBy: personId, releasedAt: at });
    await endVesselsOf(tx, storehouseId, [holdId], at);
    await tellReleased(tx, context, seen);
  });
}

/** Whoever was told of the hold, and who came to have some of it since. */
async function tellReleased(tx: Tx, context: Context, seen: SeenHold): Promise<void> {
  const { storehouseId } = context.actor;
  const { hold, bag } = seen;
  const finding = endSentence(hold.finding);
  const owners = bag ? await listOwnersOfLot(tx, storehouseId, bag) : await listConcerned(tx, hold);
  const told = await listToldOfHold(tx, storehouseId, hold.holdId);
  const says = bag
    ? `Bag ${bag.bagCode} is released: ${finding} What you have of it may be used again.`
    : `What was on hold is released: ${finding} What you have of it may be used again, unless it is on hold for something else.`;
  for (const householdId of new Set([...told, ...owners.map((owner) => owner.householdId)]))
    await tellOwner(tx, context, {
      ...{ about: nameOf(seen) || NAMELESS, aboutEs: nameOf(seen, 'es') || NAMELESS },
      ...{ buyId: bag?.buyId ?? null, hold, kind: 'released', householdId },
      says,
    });
}

export function readHold(context: Context, holdId: string): Promise<SeenHold> {
  return withTx(context, (tx) => loadHold(tx, context.actor.storehouseId, holdId));
}

export function readHolds(context: Context, query: HoldQuery): Promise<SeenHold[]> {
  const { after, limit, open: isOpen, buyId } = query;
  return withTx(context, (tx) =>
    listHolds(tx, context.actor.storehouseId, { after, limit: limit + 1, isOpen, buyId }),
  );
}

/** Locks the buy of a bag first, as every use case of a buy does; then the hold can't end twice. */
function withOpenHold(
  context: Context,
  holdId: string,
  work: (tx: Tx, seen: SeenHold) => Promise<void>,
): Promise<SeenHold> {
  const { storehouseId } = context.actor;
  const inside = async (tx: Tx) => {
    const seen = await loadHold(tx, storehouseId, holdId);
    if (seen.bag) await lockBuyForUpdate(tx, storehouseId, seen.bag.buyId);
    const hold = await lockHold(tx, storehouseId, holdId);
    if (hold.releasedAt) throw new Problem('hold-ended');
    await work(tx, { ...seen, hold });
    return loadHold(tx, storehouseId, holdId);
  };
  return withTx(context, inside, { task: 'notice' });
}
