import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import { scaleStanding } from '@sheafbook/packing';
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
  listScaleChecks,
  listScalePieces,
  type ScaleRead,
} from './queries.ts';
import type { ScaleCheckWish } from './schema.ts';

/** Writes down what a scale shows of a known weight. A check is never changed: a later one stands in its place. */
export function checkScale(context: Context, unitId: string, wish: ScaleCheckWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const { equipmentItemId } = await loadUnit(tx, storehouseId, unitId);
    const item = await lockItem(tx, storehouseId, equipmentItemId);
    if (!item.isScale)
      throw fieldProblem(
        'invalid-input',
        'unit',
        'This is no scale. Say of the thing that it is one, then check it.',
      );
    const { checkedOn = todayOf(context), ...reading } = wish;
    refuseFutureDay(context, { field: 'checkedOn', on: checkedOn });
    await insertScaleCheck(tx, {
      ...{ storehouseId, scaleCheckId: newId(context), equipmentItemId, equipmentUnitId: unitId },
      ...{ ...reading, checkedOn, checkedBy: personId, recordedAt: context.now() },
    });
    return readScalesInside(tx, context, { onDay: todayOf(context) });
  });
}

/** Every scale that is in use, as it stands today. */
export const readScales = (context: Context) =>
  withTx(context, (tx) => readScalesInside(tx, context, { onDay: todayOf(context) }));

export function readScaleChecks(context: Context, itemId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadItem(tx, storehouseId, itemId);
    return listScaleChecks(tx, storehouseId, itemId);
  });
}

async function readScalesInside(
  tx: Tx,
  { actor: { storehouseId } }: Context,
  { onDay, unitIds }: { onDay: string; unitIds?: readonly string[] },
): Promise<ScaleRead[]> {
  const pieces = await listScalePieces(tx, storehouseId, unitIds === undefined ? {} : { unitIds });
  const ids = pieces.map(({ unit }) => unit.equipmentUnitId);
  const lasts = new Map(
    (await listLastChecks(tx, storehouseId, ids)).map((row) => [row.equipmentUnitId, row]),
  );
  return pieces.map((piece) => {
    const last = lasts.get(piece.unit.equipmentUnitId) ?? null;
    return { ...piece, last, standing: scaleStanding(last, onDay) };
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
