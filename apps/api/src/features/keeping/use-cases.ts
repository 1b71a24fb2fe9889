import type { Tx } from '@sheafbook/db';
import type { ContainerRow, PlaceRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadPlace } from '../place/queries.ts';
import { mayMoveCommonStock } from './policy.ts';
import { insertMoves, listMovesTold, loadMovables } from './queries.ts';
import type { MoveWish } from './schema.ts';

export { type DateTerms, type Kept, loadKept, type Stay } from './kept.ts';

/** Writes down that containers stand at a place since a day, today unless another is named. */
export function moveContainers(context: Context, wish: MoveWish) {
  const { storehouseId, householdId, personId } = context.actor;
  const movedOn = wish.movedOn ?? todayOf(context);
  return withTx(context, async (tx) => {
    refuseFutureDay(context, { field: 'movedOn', on: movedOn });
    const moved = await loadMovables(tx, storehouseId, { ...wish, householdId });
    const place = await loadPlaceFor(tx, context, wish.placeId, moved);
    const early = moved.filter(({ packedOn }) => movedOn < packedOn);
    if (early[0])
      throw fieldProblem(
        'invalid-input',
        'movedOn',
        `${early[0].containerCode} was packed on ${early[0].packedOn}; it stands nowhere before.`,
      );
    await insertMoves(
      tx,
      moved.map(({ containerId }) => ({
        ...{ storehouseId, containerMoveId: newId(context), containerId, movedOn, placeId: wish.placeId },
        ...{ toldTenths: wish.toldTenths, movedBy: personId, movedAt: context.now() },
      })),
    );
    return { containers: moved, place, movedOn };
  });
}

/** A household's own may stand in its places and the store's, common stock in the store's alone. */
async function loadPlaceFor(
  tx: Tx,
  { actor }: Context,
  placeId: string | null,
  moved: readonly ContainerRow[],
): Promise<PlaceRow | null> {
  const { storehouseId, householdId } = actor;
  const isCommon = moved.some((container) => container.householdId === null);
  if (isCommon && !mayMoveCommonStock(actor)) throw new Problem('duty-missing');
  if (placeId === null) return null;
  const place = await loadPlace(tx, storehouseId, { placeId, householdId });
  if (isCommon && place.householdId !== null)
    throw fieldProblem('invalid-input', 'placeId', 'Common stock stands in a place of the store’s.');
  return place;
}

/** Where one of the household's own containers stood, or one of common stock's. */
export function readMoves(context: Context, containerId: string) {
  const { storehouseId, householdId } = context.actor;
  return withTx(context, async (tx) => {
    await loadMovables(tx, storehouseId, { containerIds: [containerId], householdId });
    await noteHelpersRead(tx, context, 'places and what stands in them');
    return listMovesTold(tx, storehouseId, containerId);
  });
}
