import type { Tx } from '@sheafbook/db';
import type { ContainerRow, PlaceRow } from '@sheafbook/db/tables';
import { whatHelps } from '@sheafbook/keeping';
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listPlaces, listWarmth, loadOf, loadPlace } from '../place/queries.ts';
import { warmthNow } from '../place/use-cases.ts';
import { type Keeping, type Kept, loadKept } from './kept.ts';
import { mayMoveCommonStock } from './policy.ts';
import { insertMoves, listMovesTold, listPlacesById, loadMovables } from './queries.ts';
import type { MoveWish } from './schema.ts';

export { type Kept, loadKept, withKeeping } from './kept.ts';
export { presentKeepingOf, presentPlaceOf } from './present.ts';

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

/** Says it before the database does, and of which field. How much stands there already is for its keepers alone. */
async function refuseOverload(tx: Tx, place: PlaceRow, moved: readonly ContainerRow[]): Promise<void> {
  if (place.mostGrams === null) return;
  const ids = moved.map(({ containerId }) => containerId);
  if ((await loadOf(tx, place, ids)) <= place.mostGrams) return;
  throw fieldProblem(
    'place-full',
    'placeId',
    `The shelves of ${place.name} carry no more. Set some of it somewhere else.`,
  );
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
  await refuseOverload(tx, place, moved);
  if (isCommon && place.householdId !== null)
    throw fieldProblem('invalid-input', 'placeId', 'Common stock stands in a place of the store’s.');
  return place;
}

/** How one of the household's own containers keeps, or one of common stock's, why, and what would help it most. */
export function readKeeping(context: Context, containerId: string) {
  const { storehouseId, householdId } = context.actor;
  const todayOn = todayOf(context);
  return withTx(context, async (tx) => {
    await loadMovables(tx, storehouseId, { containerIds: [containerId], householdId });
    await noteHelpersRead(tx, context, 'places and what stands in them');
    const [kept] = await loadKept(tx, storehouseId, { containerIds: [containerId] }, todayOn);
    assert(kept, 'the container was found before');
    const places = await listOtherPlaces(tx, kept, householdId);
    const helps = kept.keeping === null ? [] : helpsOf(kept, kept.keeping, places, todayOn);
    const names = [...places.list, ...(await listPlacesById(tx, storehouseId, placeIdsOf(kept)))];
    return { kept, helps, placeById: new Map(names.map((place) => [place.placeId, place])), todayOn };
  });
}

const placeIdsOf = ({ stays }: Kept) => stays.flatMap(({ placeId }) => placeId ?? []);

/** Where else a container could stand: a household's among its own places, common stock's among the store's. */
async function listOtherPlaces(tx: Tx, { container, place }: Kept, householdId: string | null) {
  const { storehouseId } = container;
  const all = await listPlaces(tx, storehouseId, householdId);
  const list = all.filter(
    (other) => other.householdId === container.householdId && other.placeId !== place?.placeId,
  );
  const rows = await listWarmth(
    tx,
    storehouseId,
    list.map(({ placeId }) => placeId),
  );
  return { list, rows };
}

/** Moving is advised to places that were measured: nobody carries cans on a guess. */
function helpsOf(
  { food, grams }: Kept,
  { input }: Keeping,
  { list, rows }: Awaited<ReturnType<typeof listOtherPlaces>>,
  todayOn: string,
) {
  const measured = list.flatMap(({ placeId, isLit }) => {
    const warmth = warmthNow(
      rows.filter((row) => row.placeId === placeId),
      todayOn,
    );
    return warmth.unknownDays > 0 ? [] : [{ placeId, isLit, tenthsCelsius: warmth.agesLikeTenths }];
  });
  return whatHelps(input, { grams, needsMoistureTest: food.needsMoistureTest }, measured);
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
