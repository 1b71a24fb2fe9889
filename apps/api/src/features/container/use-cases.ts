import type { Tx } from '@sheafbook/db';
import type { ContainerKindRow, ContainerRow } from '@sheafbook/db/tables';
import { letsGoTo, OUTCOME_WORDS, type TreatmentCode } from '@sheafbook/keeping';
import { type MovementDraft, massAccount, moveGrams, poured } from '@sheafbook/ledger';
import { assert, codeFromNumber } from '@sheafbook/units';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { type PageQuery, pageOf } from '../../platform/paging.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { insertLot } from '../bag/queries.ts';
import { lockBuyForShare } from '../buy/queries.ts';
import { loadContainerKind } from '../container-kind/queries.ts';
import { loadFood } from '../food/queries.ts';
import { endHoldsOfEmpty, listHeld, refuseHeld } from '../hold/queries.ts';
import { takeNumbers } from '../household/queries.ts';
import { loadHouseOwners, loadOutsideVessels } from '../storehouse/queries.ts';
import { judgeContainerFill } from './fill.ts';
import {
  findOutcome,
  insertContainers,
  insertVessels,
  listBagsOfOwner,
  listContainers,
  listPoured,
  loadBagOfOwner,
  loadContainer,
  lockContainer,
  markOpened,
  refuseEnded,
  refuseInDoubt,
  refuseOffered,
  refuseSpent,
  updateTreatment,
} from './queries.ts';
import type { BringIn, Pour, PourInto, Treated, UseUp } from './schema.ts';
import { judgeTreatmentToCome, listTreatmentWarnings } from './treatment.ts';
import { withKept } from './with-kept.ts';

export { judgeContainerFill } from './fill.ts';

/** Six characters and the check; a bag's code is one shorter, so that no bag and no container ever share one. */
const CODE_LENGTH = 6;

/** Fills a number of new containers alike from the household's own grams in a bag, as one entry. */
export function pourContainers(context: Context, wish: Pour) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const { bag, food } = await lockBagOfOwner(tx, storehouseId, {
      ...{ bagId: wish.bagId, ownerId: householdId },
      ...{ grams: wish.count * wish.gramsEach, field: 'count' },
    });
    const kind = await loadContainerKind(tx, storehouseId, wish.containerKindId);
    const filling = judgeContainerFill(wish.gramsEach, kind, food, 'gramsEach');
    const packedOn = wish.packedOn ?? todayOf(context);
    const warnings = [...filling, ...judgeTreatmentToCome(wish, kind, food)];
    refuseFutureDay(context, { field: 'packedOn', on: packedOn });
    const filled = await makeContainers(tx, context, {
      ...{ kind, householdId, packedOn, count: wish.count, lotId: bag.lotId, note: wish.note },
      ...{ treatment: wish.treatment, moistureTenths: wish.moistureTenths },
    });
    const entry = await postEntry(tx, context, {
      what: 'poured',
      onDay: todayOf(context),
      buyId: bag.buyId,
      subjectId: bag.bagId,
      note: wish.note,
      drafts: filled.flatMap(({ containerId }) =>
        poured({
          lotId: bag.lotId,
          bagVesselId: bag.bagId,
          containerVesselId: containerId,
          ownerId: householdId,
          amountGrams: wish.gramsEach,
        }),
      ),
    });
    return { entry, containers: filled, gramsEach: wish.gramsEach, kind, food, warnings };
  });
}

/** Pours more into a container that stands already: the same lot, and never past what it can be made to hold. */
export function pourIntoContainer(context: Context, containerId: string, wish: PourInto) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    await loadContainer(tx, storehouseId, { householdId, containerId }); // whose it is, before any word on the bag
    const { bag } = await lockBagOfOwner(tx, storehouseId, { ...wish, ownerId: householdId, field: 'grams' });
    await lockContainer(tx, storehouseId, containerId);
    const held = await loadContainer(tx, storehouseId, { householdId, containerId });
    await refuseInDoubt(tx, storehouseId, containerId);
    await refuseOffered(tx, storehouseId, { containerIds: [containerId], now: context.now() });
    await refuseEnded(tx, storehouseId, containerId);
    if (held.grams === 0) await refuseSpent(tx, held.container);
    if (bag.lotId !== held.container.lotId) throw new Problem('another-lot');
    judgeContainerFill(held.grams + wish.grams, held.kind, held.food, 'grams');
    await postEntry(tx, context, {
      what: 'poured',
      onDay: todayOf(context),
      buyId: bag.buyId,
      subjectId: containerId,
      drafts: poured({
        lotId: bag.lotId,
        bagVesselId: bag.bagId,
        containerVesselId: containerId,
        ownerId: householdId,
        amountGrams: wish.grams,
      }),
    });
    return loadContainer(tx, storehouseId, { householdId, containerId });
  });
}

/** Records food that a household had before; it comes from outside, as a lot of its own with its history in words. */
export function bringInStock(context: Context, wish: BringIn) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const food = await loadFood(tx, storehouseId, wish.foodId);
    const kind = await loadContainerKind(tx, storehouseId, wish.containerKindId);
    const filling = judgeContainerFill(wish.gramsEach, kind, food, 'gramsEach');
    const warnings = [...filling, ...listTreatmentWarnings(wish, kind, food)];
    refuseFutureDay(context, { field: 'packedOn', on: wish.packedOn });
    const { packedOn } = wish;
    const lotId = newId(context);
    await insertLot(tx, {
      storehouseId,
      lotId,
      foodId: food.foodId,
      harvestYear: wish.harvestYear ?? null,
      originNote: wish.originNote,
      madeOn: packedOn,
    });
    const filled = await makeContainers(tx, context, {
      ...{ kind, householdId, packedOn, count: wish.count, lotId, note: '' },
      ...{ treatment: wish.treatment, moistureTenths: wish.moistureTenths },
    });
    const vesselIdOf = await loadOutsideVessels(tx, storehouseId);
    const { unassignedId } = await loadHouseOwners(tx, storehouseId);
    const from = massAccount(vesselIdOf('supplier'), unassignedId);
    const entry = await postEntry(tx, context, {
      what: 'stock-brought-in',
      onDay: todayOf(context),
      subjectId: lotId,
      note: wish.originNote,
      drafts: filled.map(({ containerId }) =>
        moveGrams({ lotId, from, to: massAccount(containerId, householdId), amountGrams: wish.gramsEach }),
      ),
    });
    return { entry, containers: filled, gramsEach: wish.gramsEach, kind, food, warnings };
  });
}

/** Says what was done to a container as it was packed. What was done was done: what doesn't fit is warned of, never refused. */
export function sayTreatment(context: Context, containerId: string, said: Treated) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    await loadContainer(tx, storehouseId, { householdId, containerId });
    await lockContainer(tx, storehouseId, containerId);
    const { container, kind, food, grams } = await loadContainer(tx, storehouseId, {
      householdId,
      containerId,
    });
    await updateTreatment(tx, container, said);
    const warnings = listTreatmentWarnings({ ...said, gramsEach: Math.max(1, grams) }, kind, food);
    return { shelved: await loadContainer(tx, storehouseId, { householdId, containerId }), warnings };
  });
}

/**
 * Takes grams out of a container for good: eaten, given, thrown away. The first taking opens it. What is in doubt is only
 * thrown away, and what is offered stays whole until the offer is taken back.
 */
export function useContainer(context: Context, containerId: string, wish: UseUp) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    await lockContainer(tx, storehouseId, containerId);
    const { container, grams } = await loadContainer(tx, storehouseId, { householdId, containerId });
    if (wish.to !== 'discarded') await refuseInDoubt(tx, storehouseId, containerId);
    await refuseAgainstInspection(tx, storehouseId, { containerId, to: wish.to });
    await refuseOffered(tx, storehouseId, { containerIds: [containerId], now: context.now() });
    if (grams < wish.grams)
      throw new Problem('not-enough-left', {
        detail: `There are ${grams} g left in ${container.containerCode}.`,
        leftGrams: grams,
        fields: [{ field: 'grams', message: `There are ${grams} g left.` }],
      });
    if (container.openedOn === null) await markOpened(tx, container, todayOf(context));
    await postEntry(tx, context, {
      what: `container-${wish.to}`,
      onDay: todayOf(context),
      subjectId: containerId,
      note: wish.note,
      drafts: await leaving(tx, context, { vesselId: containerId, lotId: container.lotId, wish }),
    });
    if (wish.to === 'discarded' && wish.grams === grams)
      await endHoldsOfEmpty(tx, { storehouseId, vesselIds: [containerId] }, emptied(context, wish.note));
    return loadContainer(tx, storehouseId, { householdId, containerId });
  });
}

/** What was found unfit for people, or for animals, goes to neither. */
export async function refuseAgainstInspection(
  tx: Tx,
  storehouseId: string,
  { containerId, to }: { containerId: string; to: UseUp['to'] },
): Promise<void> {
  const outcome = await findOutcome(tx, storehouseId, containerId);
  if (outcome === undefined || letsGoTo(outcome, to)) return;
  throw fieldProblem('inspection-forbids', 'to', OUTCOME_WORDS[outcome].todo.en);
}

/** Takes one's own grams out of a bag for good, such as a bag that is eaten from at home. */
export function useOwnBag(context: Context, bagId: string, wish: UseUp) {
  const ownerId = householdOf(context);
  return withTx(context, async (tx) => {
    const { bag, ownGrams } = await lockBagOfOwner(tx, context.actor.storehouseId, {
      ...{ bagId, ownerId, grams: wish.grams, field: 'grams' },
    });
    await postEntry(tx, context, {
      what: `bag-${wish.to}`,
      onDay: todayOf(context),
      buyId: bag.buyId,
      subjectId: bagId,
      note: wish.note,
      drafts: await leaving(tx, context, { vesselId: bagId, lotId: bag.lotId, wish }),
    });
    return { bagId, bagCode: bag.bagCode, grams: ownGrams - wish.grams };
  });
}

/** How a hold ends that has nothing left to hold. */
const emptied = (context: Context, note: string) => ({
  finding: note || 'What it held was thrown away.',
  at: context.now(),
});

/** Puts a pour back into its bag; refused with the containers that have been eaten from since (ledger-notes 6.3). */
export function undoPour(context: Context, entryId: string, reason: string) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const filled = await listPoured(tx, storehouseId, { entryId, householdId });
    const [first] = filled;
    if (!first) throw new Problem('thing-not-found', { thing: 'pour' });
    if (first.isUndone) throw new Problem('already-reversed');
    const blockers = filled.filter(({ grams, pouredGrams }) => grams < pouredGrams);
    if (blockers.length > 0)
      throw new Problem('cannot-reverse', {
        detail: `${blockers.map(({ containerCode }) => containerCode).join(', ')} has been eaten from or is empty already.`,
        containers: blockers.map(({ containerCode }) => containerCode),
      });
    if (first.buyId !== null) await lockBuyForShare(tx, storehouseId, first.buyId);
    const containerIds = filled.map(({ containerId }) => containerId).toSorted();
    for (const containerId of containerIds) await lockContainer(tx, storehouseId, containerId);
    await refuseHeld(tx, storehouseId, containerIds);
    await refuseOffered(tx, storehouseId, { containerIds, now: context.now() });
    const reversal = { what: 'pour-undone', onDay: todayOf(context), reversesId: entryId, note: reason };
    return reverseEntry(tx, context, { ...reversal, buyId: first.buyId ?? undefined });
  });
}

export function listShelf(context: Context, { after, limit }: PageQuery) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const rows = await listContainers(tx, storehouseId, { householdId, after, limit: limit + 1 });
    const page = pageOf(rows, limit, (row) => row.container.containerId);
    return { ...page, rows: await withKept(tx, storehouseId, page.rows, todayOf(context)) };
  });
}

/** The household's own grams in bags, wherever these stand, and whether a bag is on hold. */
export function listOwnBags(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const rows = await listBagsOfOwner(tx, storehouseId, householdOf(context));
    const holds = await listHeld(
      tx,
      storehouseId,
      rows.map(({ bag }) => bag.bagId),
    );
    const held = new Set(holds.map(({ vesselId }) => vesselId));
    await noteHelpersRead(tx, context, 'shares and stock');
    return rows.map((row) => ({ ...row, isHeld: held.has(row.bag.bagId) }));
  });
}

export function readContainer(context: Context, containerId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const shelved = await loadContainer(tx, storehouseId, { householdId: householdOf(context), containerId });
    const [row] = await withKept(tx, storehouseId, [shelved], todayOf(context));
    assert(row, 'one was asked for');
    return row;
  });
}

/**
 * The bag, share-locked and not on hold, with enough of an owner's grams in it. Its buy is share-locked first, as whoever
 * puts a bag on hold locks the buy and then the bag.
 */
export async function lockBagOfOwner(
  tx: Tx,
  storehouseId: string,
  wish: { bagId: string; ownerId: string; grams: number; field: string },
) {
  const { bag } = await loadBagOfOwner(tx, storehouseId, wish);
  await lockBuyForShare(tx, storehouseId, bag.buyId);
  await refuseHeld(tx, storehouseId, [wish.bagId]);
  const row = await loadBagOfOwner(tx, storehouseId, wish);
  if (row.ownGrams < wish.grams)
    throw new Problem('not-enough-left', {
      detail: `${row.ownGrams} g in this bag are yours; ${wish.grams} g were asked for.`,
      leftGrams: row.ownGrams,
      fields: [{ field: wish.field, message: `${row.ownGrams} g of this bag are yours.` }],
    });
  return row;
}

export {
  judgeAbsorbersIn,
  judgeFromBagsAt,
  listTreatmentWarnings,
  listWarningsFromBags,
} from './treatment.ts';

/** New containers with codes of their own; what goes in is posted by the caller. */
export async function makeContainers(
  tx: Tx,
  context: Context,
  wish: {
    kind: ContainerKindRow;
    householdId: string | null;
    lotId: string;
    packedOn: string;
    count: number;
    note: string;
    treatment?: TreatmentCode | null;
    moistureTenths?: number | null;
  },
): Promise<ContainerRow[]> {
  const { storehouseId } = context.actor;
  const { kind, householdId, lotId, packedOn, note, treatment = null, moistureTenths = null } = wish;
  const numbers = await takeNumbers(tx, storehouseId, { counter: 'container', count: wish.count });
  const rows = numbers.map((number) => ({
    storehouseId,
    containerId: newId(context),
    containerCode: codeFromNumber(number, CODE_LENGTH),
    containerKindId: kind.containerKindId,
    lotId,
    householdId,
    packedOn,
    note,
    treatment,
    moistureTenths,
  }));
  await insertVessels(
    tx,
    rows.map(({ containerId }) => ({ storehouseId, vesselId: containerId, kind: 'container' })),
  );
  return insertContainers(tx, rows);
}

async function leaving(
  tx: Tx,
  context: Context,
  { vesselId, lotId, wish }: { vesselId: string; lotId: string; wish: UseUp },
): Promise<MovementDraft[]> {
  const householdId = householdOf(context);
  const vesselIdOf = await loadOutsideVessels(tx, context.actor.storehouseId);
  const [from, to] = [massAccount(vesselId, householdId), massAccount(vesselIdOf(wish.to), householdId)];
  return [moveGrams({ lotId, from, to, amountGrams: wish.grams })];
}
