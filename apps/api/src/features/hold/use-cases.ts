import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockBuyForUpdate } from '../buy/queries.ts';
import { mayReleaseTogether } from './policy.ts';
import {
  findBuyOfBag,
  type HoldOfBag,
  insertHold,
  listDutiesOf,
  listHolds,
  listOpenHolds,
  loadHold,
  lockBagToHold,
  lockHold,
  updateHold,
} from './queries.ts';
import type { HoldFinding, HoldQuery, HoldReason } from './schema.ts';

export { mayHold, mayReleaseTogether } from './policy.ts';

/** Stops a bag: nothing leaves it until two people let it go. At any stage, since a recall may come years later. */
export function holdBag(context: Context, bagId: string, { reason }: HoldReason): Promise<HoldOfBag> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await lockBuyForUpdate(tx, storehouseId, await findBuyOfBag(tx, storehouseId, bagId));
    const bag = await lockBagToHold(tx, storehouseId, bagId);
    if (bag.decision === 'refused')
      throw new Problem('not-enough-left', {
        detail: 'The bag was refused, so there is nothing of it here.',
      });
    if ((await listOpenHolds(tx, storehouseId, [bagId])).length > 0) throw new Problem('bag-already-held');
    return { hold: await beginHold(tx, context, { bagId, reason }), bag };
  });
}

/** Puts a bag on hold inside the caller's transaction, which is alone with its buy and found no hold on it. */
export function beginHold(tx: Tx, context: Context, wish: { bagId: string; reason: string }) {
  const { storehouseId, personId } = context.actor;
  return insertHold(tx, { ...wish, storehouseId, heldBy: personId, heldAt: context.now() });
}

/** The first of two: writes down what was found and asks for the release. Asking again replaces the finding. */
export function askForRelease(context: Context, holdId: string, { finding }: HoldFinding) {
  const { personId } = context.actor;
  return withOpenHold(context, holdId, (tx, { hold }) =>
    updateHold(tx, hold, { finding, releaseAskedBy: personId }),
  );
}

/** The second of two, another person, so that both duties were at it: packing lead and coordinator. */
export function agreeToRelease(context: Context, holdId: string) {
  const { storehouseId, personId, duties } = context.actor;
  return withOpenHold(context, holdId, async (tx, { hold }) => {
    if (hold.releaseAskedBy === null)
      throw new Problem('second-login-needed', { detail: 'Nobody has asked for the release yet.' });
    if (hold.releaseAskedBy === personId)
      throw new Problem('second-login-needed', { detail: 'Somebody else must agree to what you found.' });
    const asker = await listDutiesOf(tx, storehouseId, hold.releaseAskedBy);
    if (!mayReleaseTogether(asker, duties))
      throw new Problem('second-login-needed', {
        detail: 'A release takes a packing lead and a coordinator, two different people.',
      });
    return updateHold(tx, hold, { releasedBy: personId, releasedAt: context.now() });
  });
}

export function readHold(context: Context, holdId: string): Promise<HoldOfBag> {
  return withTx(context, (tx) => loadHold(tx, context.actor.storehouseId, holdId));
}

export function readHolds(context: Context, query: HoldQuery): Promise<HoldOfBag[]> {
  const { after, limit, open: isOpen, buyId } = query;
  return withTx(context, (tx) =>
    listHolds(tx, context.actor.storehouseId, { after, limit: limit + 1, isOpen, buyId }),
  );
}

/** Locks the buy first, as every use case of a buy does; then the hold can't end twice. */
function withOpenHold(
  context: Context,
  holdId: string,
  work: (tx: Tx, held: HoldOfBag) => Promise<HoldOfBag['hold']>,
): Promise<HoldOfBag> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const { bag } = await loadHold(tx, storehouseId, holdId);
    await lockBuyForUpdate(tx, storehouseId, bag.buyId);
    const hold = await lockHold(tx, storehouseId, holdId);
    if (hold.releasedAt) throw new Problem('hold-ended');
    return { hold: await work(tx, { hold, bag }), bag };
  });
}
