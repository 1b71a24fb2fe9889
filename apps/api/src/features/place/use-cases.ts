import type { Tx } from '@sheafbook/db';
import type { PlaceRow, PlaceWarmthRow } from '@sheafbook/db/tables';
import { addDays } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { mayKeepPlace } from './policy.ts';
import { presentPlace } from './present.ts';
import {
  deleteLog,
  deleteTypedMonths,
  hasPlaceNamed,
  insertPlace,
  insertWarmth,
  listLogs,
  listPlaces,
  listWarmth,
  listWarmthBetween,
  loadOf,
  loadPlace,
  lockPlace,
  updatePlace,
} from './queries.ts';
import { monthAfter, warmthNow } from './record.ts';
import type { MonthsWish, NewPlace, PlaceEdit } from './schema.ts';

export { steadyTenths, warmthNow, warmthOver } from './record.ts';

/** One's own places and the store's, with how warm each is. */
export function readPlaces(context: Context) {
  const { storehouseId, householdId } = context.actor;
  return withTx(context, async (tx) => {
    const places = await listPlaces(tx, storehouseId, householdId);
    const rows = await listWarmth(
      tx,
      storehouseId,
      places.map(({ placeId }) => placeId),
    );
    await noteHelpersRead(tx, context, 'places and their warmth');
    return places.map((place) => placeNow(context, place, rows));
  });
}

export function readPlace(context: Context, placeId: string) {
  return withTx(context, (tx) => recordOf(tx, context, placeId));
}

/** A place with all that is known of its warmth, inside the caller's transaction. */
export async function recordOf(tx: Tx, context: Context, placeId: string) {
  const { storehouseId, householdId } = context.actor;
  const place = await loadPlace(tx, storehouseId, { placeId, householdId });
  const rows = await listWarmth(tx, storehouseId, [placeId]);
  if (place.householdId !== null) await noteHelpersRead(tx, context, 'places and their warmth');
  const isKeeper = mayKeepPlace(context.actor, place.householdId);
  const loadGrams = isKeeper ? await loadOf(tx, place) : null;
  return { ...placeNow(context, place, rows), rows, loadGrams, logs: await listLogs(tx, place) };
}

const placeNow = (context: Context, place: PlaceRow, rows: readonly PlaceWarmthRow[]) => ({
  place,
  warmth: warmthNow(
    rows.filter(({ placeId }) => placeId === place.placeId),
    todayOf(context),
  ),
});

export function addPlace(context: Context, { of, ...facts }: NewPlace) {
  const { storehouseId } = context.actor;
  const householdId = of === 'store' ? null : context.actor.householdId;
  if (of === 'household' && householdId === null) throw new Problem('household-needed');
  if (!mayKeepPlace(context.actor, householdId)) throw new Problem('duty-missing');
  return withTx(context, async (tx) => {
    await refuseSameName(tx, { storehouseId, householdId, name: facts.name });
    const place = await insertPlace(tx, { storehouseId, placeId: newId(context), householdId, ...facts });
    return placeNow(context, place, []);
  });
}

export function editPlace(context: Context, placeId: string, edit: PlaceEdit) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const place = await loadKept(tx, context, placeId);
    await refuseSameName(tx, { ...place, name: edit.name }, placeId);
    const written = await updatePlace(tx, place, edit);
    const rows = await listWarmth(tx, storehouseId, [placeId]);
    if (written) return placeNow(context, written, rows);
    throw new Problem('stale-version', { newer: presentPlace(placeNow(context, place, rows)) });
  });
}

/** Writes down how warm a place was by the month. What a logger read is better and stays. */
export function sayMonths(context: Context, placeId: string, { months }: MonthsWish) {
  return withTx(context, async (tx) => {
    const place = await loadKept(tx, context, placeId);
    await lockPlace(tx, place);
    const thisMonth = todayOf(context).slice(0, 7);
    const later = months.findIndex(({ month }) => month > thisMonth);
    if (later !== -1)
      throw fieldProblem('invalid-input', `months.${later}.month`, 'This month is still to come.');
    await deleteTypedMonths(
      tx,
      place,
      months.map(({ month }) => `${month}-01`),
    );
    const rows = months.flatMap(({ month, tenthsCelsius }) =>
      tenthsCelsius === null ? [] : [monthRow(place, month, tenthsCelsius)],
    );
    const firstDays = rows.map(({ fromOn }) => fromOn).toSorted();
    if (firstDays[0] !== undefined) {
      const span = { fromOn: firstDays[0], toOn: monthAfter(firstDays.at(-1) ?? firstDays[0]) };
      const there = await listWarmthBetween(tx, place, span);
      refuseOverlap(rows, there, 'months');
    }
    await insertWarmth(tx, rows);
    return recordOf(tx, context, placeId);
  });
}

function monthRow({ storehouseId, placeId }: PlaceRow, month: string, tenths: number) {
  const fromOn = `${month}-01`;
  return {
    ...{ storehouseId, placeId, fromOn, toOn: monthAfter(fromOn), ageTenths: tenths, meanTenths: tenths },
    ...{ coldestTenths: tenths, warmestTenths: tenths, readings: 0, placeLogId: null },
  };
}

/** Takes a file back with all its readings, so that a better one can be taken in. */
export function removeLog(context: Context, placeId: string, placeLogId: string) {
  return withTx(context, async (tx) => {
    const place = await loadKept(tx, context, placeId);
    await lockPlace(tx, place);
    if (!(await deleteLog(tx, place, placeLogId))) throw new Problem('thing-not-found', { thing: 'log' });
    return recordOf(tx, context, placeId);
  });
}

/** A place that this actor may change. The store's are seen by all and kept by few. */
export async function loadKept(tx: Tx, { actor }: Context, placeId: string): Promise<PlaceRow> {
  const { storehouseId, householdId } = actor;
  const place = await loadPlace(tx, storehouseId, { placeId, householdId });
  if (!mayKeepPlace(actor, place.householdId)) throw new Problem('duty-missing');
  return place;
}

async function refuseSameName(
  tx: Tx,
  place: Pick<PlaceRow, 'storehouseId' | 'householdId' | 'name'>,
  placeId?: string,
): Promise<void> {
  const other = await hasPlaceNamed(tx, place);
  if (other !== undefined && other !== placeId)
    throw fieldProblem('already-there', 'name', 'There is a place of this name already.');
}

type Span = { readonly fromOn: string; readonly toOn: string };

/** The database holds that no two spans of a place overlap; this says which would. Both are in the order of time. */
export function refuseOverlap(rows: readonly Span[], there: readonly Span[], field: string): void {
  const taken = rows.filter((row) =>
    there.some(({ fromOn, toOn }) => fromOn < row.toOn && row.fromOn < toOn),
  );
  const [first, last] = [taken[0], taken.at(-1)];
  if (!first || !last) return;
  const lastOn = addDays(last.toOn, -1);
  const message = `From ${first.fromOn} to ${lastOn} this place has a record already. Take that out first.`;
  throw new Problem('readings-overlap', { detail: message, fields: [{ field, message }] });
}
