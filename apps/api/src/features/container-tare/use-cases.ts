import type { Tx } from '@sheafbook/db';
import { judgeTare } from '@sheafbook/packing';
import type { Context } from '../../platform/context.ts';
import { happenedAt } from '../../platform/happened-at.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockContainerKind, updateContainerKind } from '../container-kind/queries.ts';
import { insertTare, listLastTares, listTaresOfKind } from './queries.ts';
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
    const weighedAt = happenedAt(context.now(), { field: 'weighedAt', at });
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

type WeighedWish = {
  readonly containerKindId: string;
  readonly weighed: { readonly how: string; readonly tareGrams?: number | number[] };
};

/**
 * The ten empties whose mean somebody took off, null where nobody did. A phone without a signal goes by the weighing that it
 * knows, so an older one of the kind is as good as the last; one whose ten are too unlike is none.
 */
export async function requireTareOfKind(
  tx: Tx,
  storehouseId: string,
  { containerKindId, weighed }: WeighedWish,
): Promise<string | null> {
  if (weighed.how !== 'tare-of-kind') return null;
  const tare = (await listTaresOfKind(tx, storehouseId, containerKindId)).find(({ readings }) => {
    const { isAlike, meanGrams } = judgeTare(readings);
    return isAlike && meanGrams === weighed.tareGrams;
  });
  if (tare) return tare.containerTareId;
  throw fieldProblem(
    'invalid-input',
    'weighed.tareGrams',
    'No ten empties of this kind have this tare. Weigh ten, or tare each container by itself.',
  );
}
