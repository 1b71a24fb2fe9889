import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import {
  type ScaleReading,
  scaleStanding,
  type ThermometerReading,
  thermometerStanding,
} from '@sheafbook/packing';
import { dayInZone } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listBookingsOfSession } from '../booking/queries.ts';
import { loadItem, loadUnit, lockItem } from '../equipment/queries.ts';
import { presentScale } from './present.ts';
import {
  insertScaleCheck,
  listLastChecks,
  listMeasurePieces,
  listScaleChecks,
  type MeasureKind,
  type ScaleRead,
  type ThermometerRead,
} from './queries.ts';
import { degreesOf, gramsOf } from './reading.ts';
import type { ScaleCheckWish, ThermometerCheckWish } from './schema.ts';

/** Writes down what a scale shows of a known weight. A check is never changed: a later one stands in its place. */
export function checkScale(context: Context, unitId: string, { checkedOn, ...reading }: ScaleCheckWish) {
  return withTx(context, async (tx) => {
    await writeCheck(tx, context, { kind: 'scale', unitId, checkedOn, reading });
    return readScalesInside(tx, context, { onDay: todayOf(context) });
  });
}

/** The same of a thermometer in a known temperature. */
export function checkThermometer(
  context: Context,
  unitId: string,
  { checkedOn, ...reading }: ThermometerCheckWish,
) {
  return withTx(context, async (tx) => {
    await writeCheck(tx, context, { kind: 'thermometer', unitId, checkedOn, reading });
    return readThermometersInside(tx, context);
  });
}

const NONE_OF = {
  scale: 'This is no scale. Say of the thing that it is one, then check it.',
  thermometer: 'This is no thermometer. Say of the thing that it is one, then check it.',
} as const satisfies Record<MeasureKind, string>;

async function writeCheck(
  tx: Tx,
  context: Context,
  of: {
    kind: MeasureKind;
    unitId: string;
    checkedOn: string | undefined;
    reading: ScaleReading | ThermometerReading;
  },
): Promise<void> {
  const { storehouseId, personId } = context.actor;
  const { equipmentItemId } = await loadUnit(tx, storehouseId, of.unitId);
  const { isScale, isThermometer } = await lockItem(tx, storehouseId, equipmentItemId);
  if (!{ scale: isScale, thermometer: isThermometer }[of.kind])
    throw fieldProblem('invalid-input', 'unit', NONE_OF[of.kind]);
  const { checkedOn = todayOf(context) } = of;
  refuseFutureDay(context, { field: 'checkedOn', on: checkedOn });
  await insertScaleCheck(tx, {
    ...{ storehouseId, scaleCheckId: newId(context), equipmentItemId, equipmentUnitId: of.unitId },
    ...{ isScale, isThermometer, ...of.reading },
    ...{ checkedOn, checkedBy: personId, recordedAt: context.now() },
  });
}

/** Every scale that is in use, as it stands today. */
export const readScales = (context: Context) =>
  withTx(context, (tx) => readScalesInside(tx, context, { onDay: todayOf(context) }));

/** Every thermometer that is in use, as it stands today. */
export const readThermometers = (context: Context) =>
  withTx(context, (tx) => readThermometersInside(tx, context));

export const readScaleChecks = (context: Context, itemId: string) => readChecks(context, 'scale', itemId);

export const readThermometerChecks = (context: Context, itemId: string) =>
  readChecks(context, 'thermometer', itemId);

function readChecks(context: Context, kind: MeasureKind, itemId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadItem(tx, storehouseId, itemId);
    return listScaleChecks(tx, storehouseId, { kind, itemId });
  });
}

/** The pieces of a kind, each with its last check. */
async function listWithLast(
  tx: Tx,
  { actor: { storehouseId } }: Context,
  of: { kind: MeasureKind; unitIds?: readonly string[] | undefined },
) {
  const pieces = await listMeasurePieces(tx, storehouseId, of);
  const ids = pieces.map(({ unit }) => unit.equipmentUnitId);
  const lasts = new Map(
    (await listLastChecks(tx, storehouseId, ids)).map((row) => [row.equipmentUnitId, row]),
  );
  return pieces.map((piece) => ({ ...piece, last: lasts.get(piece.unit.equipmentUnitId) ?? null }));
}

async function readScalesInside(
  tx: Tx,
  context: Context,
  { onDay, unitIds }: { onDay: string; unitIds?: readonly string[] },
): Promise<ScaleRead[]> {
  return (await listWithLast(tx, context, { kind: 'scale', unitIds })).map((read) => {
    const { last } = read;
    const reading = last && { ...gramsOf(last), checkedOn: last.checkedOn };
    return { ...read, standing: scaleStanding(reading, onDay) };
  });
}

async function readThermometersInside(tx: Tx, context: Context): Promise<ThermometerRead[]> {
  return (await listWithLast(tx, context, { kind: 'thermometer' })).map((read) => {
    const { last } = read;
    const reading = last && { ...degreesOf(last), checkedOn: last.checkedOn };
    return { ...read, standing: thermometerStanding(reading, todayOf(context)) };
  });
}

/** The scales that a packing day has booked, as they will stand on it, or stand today where it began; spelled as here. */
export async function listScalesOfDay(tx: Tx, context: Context, session: PackingSessionRow) {
  const { storehouseId, timeZone } = context.actor;
  const booked = await listBookingsOfSession(tx, storehouseId, session.packingSessionId);
  const unitIds = booked.map(({ equipmentUnitId }) => equipmentUnitId);
  if (unitIds.length === 0) return [];
  const startsOn = dayInZone(session.startsAt.getTime(), timeZone);
  const [onDay = startsOn] = [startsOn, todayOf(context)].toSorted().toReversed();
  return (await readScalesInside(tx, context, { onDay, unitIds })).map(presentScale);
}
