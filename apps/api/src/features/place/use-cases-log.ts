import { createHash } from 'node:crypto';
import type { Tx } from '@sheafbook/db';
import type { PlaceRow } from '@sheafbook/db/tables';
import { type LoggerFile, openLoggerFile } from '@sheafbook/keeping';
import { addDays } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { textOf } from '../../platform/text-of.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { insertLog, insertWarmth, listWarmthBetween, lockPlace } from './queries.ts';
import type { LogPreviewQuery } from './schema.ts';
import { loadKept, recordOf, refuseOverlap } from './use-cases.ts';

type Body = ReadableStream<Uint8Array> | null;
type HowToRead = Pick<LogPreviewQuery, 'unit' | 'dayOrder'> & { readonly badAfterLine?: number };

/** What came as a file: its readings by the day, and the SHA-256 of its bytes. */
export type ReceivedLog = { readonly file: LoggerFile; readonly sha256: string };

/**
 * Reads a logger's file while it comes, before any transaction begins, and keeps its days only. Whose place it is not hears
 * so before the first byte is read.
 */
export async function receiveLog(
  context: Context,
  placeId: string,
  { how, body }: { how: HowToRead; body: Body },
): Promise<ReceivedLog> {
  await withTx(context, (tx) => loadKept(tx, context, placeId));
  const { timeZone } = context.actor;
  const reading = openLoggerFile({ ...how, timeZone, untilOn: todayOf(context) });
  const hash = createHash('sha256');
  for await (const text of textOf(body, { onBytes: (bytes) => hash.update(bytes) })) reading.take(text);
  const file = reading.end();
  refuseUnread(file, how.unit);
  return { file, sha256: hash.digest('hex') };
}

/** What a logger's file would bring. Nothing is changed. */
export function previewLog(context: Context, placeId: string, { file }: ReceivedLog) {
  return withTx(context, async (tx) => {
    const place = await loadKept(tx, context, placeId);
    return { file, takenDays: await listTaken(tx, place, file) };
  });
}

/** Takes in the good readings of a logger's file, by the day. Days that are known already are refused, not overwritten. */
export function takeLog(
  context: Context,
  placeId: string,
  { file, sha256, fileName }: ReceivedLog & { readonly fileName: string },
) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const place = await loadKept(tx, context, placeId);
    await lockPlace(tx, place);
    const [first, last] = [file.days[0], file.days.at(-1)];
    if (!first || !last)
      throw fieldProblem('invalid-input', 'file', 'No line of this file holds a reading that can be.');
    const placeLogId = newId(context);
    const rows = file.days.map(({ onDay, ...warmth }) => ({
      ...{ storehouseId, placeId, placeLogId, fromOn: onDay, toOn: addDays(onDay, 1) },
      ...warmth,
    }));
    const span = { fromOn: first.onDay, toOn: addDays(last.onDay, 1) };
    refuseOverlap(rows, await listWarmthBetween(tx, place, span), 'file');
    await insertLog(tx, {
      ...{ storehouseId, placeLogId, placeId, fileName, readings: file.readings },
      ...{ firstOn: first.onDay, lastOn: last.onDay, badLines: file.badCount },
      ...{ fileHash: sha256, takenBy: personId, takenAt: context.now() },
    });
    await insertWarmth(tx, rows);
    return recordOf(tx, context, placeId);
  });
}

/** Beyond this nobody keeps food; a whole file of it is one in the other unit. */
const WARMEST_MEAN_TENTHS = 450;

function refuseUnread(file: LoggerFile, unit: 'C' | 'F'): void {
  if (!file.isReadable)
    throw fieldProblem('invalid-input', 'file', 'No line near its top has a day and a temperature.');
  if (file.unitOfHeader !== null && file.unitOfHeader !== unit)
    throw fieldProblem('invalid-input', 'unit', `The file’s own heading says °${file.unitOfHeader}.`);
  const mean = file.days.reduce((sum, day) => sum + day.meanTenths, 0) / Math.max(1, file.days.length);
  if (unit === 'C' && mean > WARMEST_MEAN_TENTHS)
    throw fieldProblem(
      'invalid-input',
      'unit',
      `On average this place would be ${Math.round(mean / 10)} °C warm. Is the file in °F?`,
    );
}

async function listTaken(tx: Tx, place: PlaceRow, { days }: LoggerFile): Promise<string[]> {
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return [];
  const there = await listWarmthBetween(tx, place, { fromOn: first.onDay, toOn: addDays(last.onDay, 1) });
  return days
    .filter(({ onDay }) => there.some(({ fromOn, toOn }) => fromOn <= onDay && onDay < toOn))
    .map(({ onDay }) => onDay);
}
