import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { offerFreedTimes } from '../booking/use-cases.ts';
import { loadItem, loadUnit, lockItem, updateUnit } from '../equipment/queries.ts';
import { insertMaintenance, listMaintenance } from './queries.ts';
import type { MaintenanceWish } from './schema.ts';

/** Writes down what was done to a piece. When it can be lent again, whoever waits is asked. */
export function recordMaintenance(context: Context, unitId: string, wish: MaintenanceWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const { equipmentItemId } = await loadUnit(tx, storehouseId, unitId);
    const item = await lockItem(tx, storehouseId, equipmentItemId);
    const unit = await loadUnit(tx, storehouseId, unitId);
    const doneOn = wish.doneOn ?? todayOf(context);
    refuseFutureDay(context, { field: 'doneOn', on: doneOn });
    await insertMaintenance(tx, {
      ...{ storehouseId, maintenanceId: newId(context), equipmentUnitId: unitId, doneOn, what: wish.what },
      ...{ isService: wish.isService, recordedBy: personId, recordedAt: context.now() },
    });
    if (wish.condition && wish.condition !== unit.condition)
      await updateUnit(tx, unit, { condition: wish.condition, conditionNote: '' });
    await offerFreedTimes(tx, context, item);
    return listMaintenance(tx, storehouseId, equipmentItemId);
  });
}

export function readMaintenance(context: Context, itemId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadItem(tx, storehouseId, itemId);
    return listMaintenance(tx, storehouseId, itemId);
  });
}
