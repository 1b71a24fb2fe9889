import { judgeTare } from '@sheafbook/packing';
import type { Context } from '../../platform/context.ts';
import { happenedAt } from '../../platform/happened-at.ts';
import { newId } from '../../platform/new-id.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockContainerKind, updateContainerKind } from '../container-kind/queries.ts';
import { insertTare, listLastTares } from './queries.ts';
import type { TareWish } from './schema.ts';

/** The last weighing of each kind. */
export const readTares = (context: Context) =>
  withTx(context, (tx) => listLastTares(tx, context.actor.storehouseId));

/**
 * Writes down what ten empties of a kind weigh. The kind's own figure follows the last weighing, and says nothing where the ten
 * are too unlike for one tare. Locks the kind, so that of two weighings the later one is what it says.
 */
export function weighTare(context: Context, { containerKindId, readings, weighedAt: at }: TareWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const kind = await lockContainerKind(tx, storehouseId, containerKindId);
    const weighedAt = happenedAt(context, { field: 'weighedAt', at });
    await insertTare(tx, {
      ...{ storehouseId, containerTareId: newId(context), containerKindId, readings },
      ...{ weighedBy: personId, weighedAt, recordedAt: context.now() },
    });
    const tares = await listLastTares(tx, storehouseId);
    const last = tares.find(({ tare }) => tare.containerKindId === containerKindId);
    const { isAlike, meanGrams } = judgeTare(last?.tare.readings ?? readings);
    const tareGrams = isAlike ? meanGrams : null;
    if (tareGrams !== kind.tareGrams) await updateContainerKind(tx, kind, { tareGrams });
    return tares;
  });
}
