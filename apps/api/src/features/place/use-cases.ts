import { createHash } from 'node:crypto';
import type { Tx } from '@sheafbook/db';
import type { PlaceRow, PlaceWarmthRow } from '@sheafbook/db/tables';
import { type LoggerFile, readLoggerFile } from '@sheafbook/keeping';
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
  insertLog,
  insertPlace,
  insertWarmth,
  listLogs,
  listPlaces,
  listWarmth,
  listWarmthBetween,
  loadPlace,
  lockPlace,
  updatePlace,
} from './queries.ts';
import { monthAfter, warmthNow } from './record.ts';
import type { LogPreviewWish, LogWish, MonthsWish, NewPlace, PlaceEdit } from './schema.ts';

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

async function recordOf(tx: Tx, context: Context, placeId: string) {
  const { storehouseId, householdId } = context.actor;
  const place = await loadPlace(tx, storehouseId, { placeId, householdId });
  const rows = await listWarmth(tx, storehouseId, [placeId]);
  if (place.householdId !== null) await noteHelpersRead(tx, context, 'places and their warmth');
  return { ...placeNow(context, place, rows), rows, logs: await listLogs(tx, place) };
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

/** What a logger's file would bring. Nothing is changed. */
export function previewLog(context: Context, placeId: string, wish: LogPreviewWish) {
  return withTx(context, async (tx) => {
    const place = await loadKept(tx, context, placeId);
    const file = readFile(context, wish, wish.badAfterLine);
    return { file, takenDays: await listTaken(tx, place, file) };
  });
}

/** Takes in the good readings of a logger's file, by the day. Days that are known already are refused, not overwritten. */
export function takeLog(context: Context, placeId: string, wish: LogWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const place = await loadKept(tx, context, placeId);
    await lockPlace(tx, place);
    const file = readFile(context, wish, 0);
    const [first, last] = [file.days[0], file.days.at(-1)];
    if (!first || !last)
      throw fieldProblem('invalid-input', 'text', 'No line of this file holds a reading that can be.');
    const placeLogId = newId(context);
    const rows = file.days.map(({ onDay, ...warmth }) => ({
      ...{ storehouseId, placeId, placeLogId, fromOn: onDay, toOn: addDays(onDay, 1) },
      ...warmth,
    }));
    const span = { fromOn: first.onDay, toOn: addDays(last.onDay, 1) };
    refuseOverlap(rows, await listWarmthBetween(tx, place, span), 'text');
    await insertLog(tx, {
      ...{ storehouseId, placeLogId, placeId, fileName: wish.fileName, readings: file.readings },
      ...{ firstOn: first.onDay, lastOn: last.onDay, badLines: file.badCount },
      ...{ fileHash: createHash('sha256').update(wish.text).digest('hex') },
      ...{ takenBy: personId, takenAt: context.now() },
    });
    await insertWarmth(tx, rows);
    return recordOf(tx, context, placeId);
  });
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
async function loadKept(tx: Tx, { actor }: Context, placeId: string): Promise<PlaceRow> {
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

/** Beyond this nobody keeps food; a whole file of it is one in the other unit. */
const WARMEST_MEAN_TENTHS = 450;

function readFile(context: Context, wish: Omit<LogPreviewWish, 'badAfterLine'>, badAfterLine: number) {
  const { text, unit, dayOrder } = wish;
  const file = readLoggerFile(text, { unit, dayOrder, untilOn: todayOf(context), badAfterLine });
  if (!file.isReadable)
    throw fieldProblem('invalid-input', 'text', 'No line near its top has a day and a temperature.');
  if (file.unitOfHeader !== null && file.unitOfHeader !== unit)
    throw fieldProblem('invalid-input', 'unit', `The file’s own heading says °${file.unitOfHeader}.`);
  const mean = file.days.reduce((sum, day) => sum + day.meanTenths, 0) / Math.max(1, file.days.length);
  if (unit === 'C' && mean > WARMEST_MEAN_TENTHS)
    throw fieldProblem(
      'invalid-input',
      'unit',
      `On average this place would be ${Math.round(mean / 10)} °C warm. Is the file in °F?`,
    );
  return file;
}

async function listTaken(tx: Tx, place: PlaceRow, { days }: LoggerFile): Promise<string[]> {
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return [];
  const there = await listWarmthBetween(tx, place, { fromOn: first.onDay, toOn: addDays(last.onDay, 1) });
  return days
    .filter(({ onDay }) => there.some(({ fromOn, toOn }) => fromOn <= onDay && onDay < toOn))
    .map(({ onDay }) => onDay);
}

type Span = { readonly fromOn: string; readonly toOn: string };

/** The database holds that no two spans of a place overlap; this says which would. Both are in the order of time. */
function refuseOverlap(rows: readonly Span[], there: readonly Span[], field: string): void {
  const taken = rows.filter((row) =>
    there.some(({ fromOn, toOn }) => fromOn < row.toOn && row.fromOn < toOn),
  );
  const [first, last] = [taken[0], taken.at(-1)];
  if (!first || !last) return;
  const lastOn = addDays(last.toOn, -1);
  const message = `From ${first.fromOn} to ${lastOn} this place has a record already. Take that out first.`;
  throw new Problem('readings-overlap', { detail: message, fields: [{ field, message }] });
}
