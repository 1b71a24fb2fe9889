import type { Tx } from '@sheafbook/db';
import { massAccount, moveGrams, takenToKitchen } from '@sheafbook/ledger';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { inSpanish } from '../../platform/spoken/spanish.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import {
  loadContainer,
  lockContainer,
  markOpened,
  markShut,
  refuseInDoubt,
  refuseOffered,
} from '../container/queries.ts';
import { refuseAgainstInspection } from '../container/use-cases.ts';
import { endHoldsWithNothing, listHoldsOfKitchen } from '../hold/queries.ts';
import { loadOutsideVessels } from '../storehouse/queries.ts';
import { ensureKitchen, hasOtherUses, type KitchenLot, listKitchen, listTakes, loadTake } from './queries.ts';
import type { Take, UseKitchen } from './schema.ts';
import { sinceOf } from './since.ts';

/**
 * Takes a container to the kitchen in one step, all of it or some. It stays the household's and stays stock. The first
 * taking opens the container. What is in doubt stays shut.
 */
export async function takeInto(tx: Tx, context: Context, containerId: string, { grams }: Take) {
  const subject = subjectOf(context);
  const { storehouseId, householdId } = subject;
  await lockContainer(tx, storehouseId, containerId);
  const { container, grams: heldGrams } = await loadContainer(tx, storehouseId, { householdId, containerId });
  await refuseInDoubt(tx, storehouseId, containerId);
  await refuseAgainstInspection(tx, storehouseId, { containerId, to: 'eaten' });
  await refuseOffered(tx, storehouseId, { containerIds: [containerId], now: context.now() });
  const takenGrams = grams ?? heldGrams;
  if (heldGrams === 0 || heldGrams < takenGrams)
    throw notEnough(heldGrams, `There are ${heldGrams} g left in ${container.containerCode}.`);
  await ensureKitchen(tx, subject);
  if (container.openedOn === null) await markOpened(tx, container, todayOf(context));
  const entry = await postEntry(tx, context, {
    what: container.openedOn === null ? 'opened-to-kitchen' : 'taken-to-kitchen',
    onDay: todayOf(context),
    subjectId: containerId,
    drafts: takenToKitchen({
      ...{ lotId: container.lotId, containerVesselId: containerId, householdId, amountGrams: takenGrams },
    }),
  });
  return {
    ...{ entry, takenGrams, wasOpenedOn: container.openedOn },
    container: await loadContainer(tx, storehouseId, { householdId, containerId }),
  };
}

/** Puts a taking back into its container, which is shut again if that taking opened it and nothing else was taken out since. */
export function undoTake(context: Context, entryId: string, reason: string) {
  const subject = subjectOf(context);
  const { storehouseId, householdId } = subject;
  return withTx(context, async (tx) => {
    const { containerId } = await loadTake(tx, subject, entryId);
    await lockContainer(tx, storehouseId, containerId);
    const take = await loadTake(tx, subject, entryId);
    if (take.isUndone) throw new Problem('already-reversed');
    const lot = (await listKitchen(tx, subject)).find(({ lotId }) => lotId === take.lotId);
    if ((lot?.grams ?? 0) < take.grams)
      throw new Problem('cannot-reverse', { detail: 'Some of it has been eaten in the kitchen since.' });
    const { container } = await loadContainer(tx, storehouseId, { householdId, containerId });
    if (take.hasOpenedIt && !(await hasOtherUses(tx, storehouseId, take))) await markShut(tx, container);
    const entry = await reverseEntry(tx, context, {
      ...{ what: 'kitchen-undone', onDay: todayOf(context), reversesId: entryId, note: reason },
    });
    return { entry, container: await loadContainer(tx, storehouseId, { householdId, containerId }) };
  });
}

/** What is in the kitchen, since when, and what was taken there that could still be put back. */
export function readKitchen(context: Context) {
  const subject = subjectOf(context);
  return withTx(context, async (tx) => {
    const lots = await listKitchen(tx, subject);
    const takes = await listTakes(tx, subject);
    await noteHelpersRead(tx, context, 'stock in the kitchen');
    return {
      lots: lots.map((lot) => ({ ...lot, sinceOn: sinceOf(lot, takes) })),
      takes: takes.filter(({ lotId, grams }) =>
        lots.some((lot) => lot.lotId === lotId && lot.grams >= grams),
      ),
    };
  });
}

/** Takes grams out of the kitchen for good: eaten, or gone some other way. */
export function useKitchen(context: Context, wish: UseKitchen) {
  const subject = subjectOf(context);
  const { storehouseId, householdId } = subject;
  const { lotId, grams: amountGrams, to, note } = wish;
  return withTx(context, async (tx) => {
    const lot = (await listKitchen(tx, subject)).find((one) => one.lotId === lotId);
    if (!lot) throw new Problem('thing-not-found', { thing: 'lot' });
    if (lot.grams < amountGrams) throw notEnough(lot.grams, `There are ${lot.grams} g of it in the kitchen.`);
    if (lot.holdId !== null && !MAY_LEAVE_HELD.has(to)) throw onHold(lot);
    const vesselIdOf = await loadOutsideVessels(tx, context.actor.storehouseId);
    const [from, into] = [
      massAccount(householdId, householdId),
      massAccount(vesselIdOf(to), householdId),
    ] as const;
    await postEntry(tx, context, {
      what: `kitchen-${to}`,
      onDay: todayOf(context),
      subjectId: lotId,
      note,
      drafts: [moveGrams({ lotId, from, to: into, amountGrams })],
    });
    if (lot.holdId !== null)
      await endHoldsWithNothing(
        tx,
        {
          storehouseId,
          holdIds: await listHoldsOfKitchen(tx, { storehouseId, householdId, lotIds: [lotId] }),
        },
        { finding: note || 'What it held was thrown away.', at: context.now() },
      );
    return { lotId, grams: lot.grams - amountGrams };
  });
}

/** As out of a held container: thrown away, spilled or sent to be tested. */
const MAY_LEAVE_HELD: ReadonlySet<string> = new Set(['discarded', 'spilled', 'sampled']);

const wordsOnHold = (food: string): string =>
  `Some of the ${food} in your kitchen came out of what is on hold, and it lies together there. None of it is eaten or given until that is released; it may be thrown away.`;

const onHold = ({ food }: KitchenLot) =>
  new Problem('on-hold', {
    detail: wordsOnHold(food.nameEn),
    detailEs: inSpanish(wordsOnHold(food.nameEs)),
  });

const subjectOf = (context: Context) => ({
  storehouseId: context.actor.storehouseId,
  householdId: householdOf(context),
});

const notEnough = (leftGrams: number, detail: string) =>
  new Problem('not-enough-left', {
    detail,
    leftGrams,
    fields: [{ field: 'grams', message: `There are ${leftGrams} g left.` }],
  });
