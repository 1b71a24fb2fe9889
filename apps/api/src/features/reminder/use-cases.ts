import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { presentWishes } from './present.ts';
import { findWishes, loadPlace, type OwnWishes, upsertWishes } from './queries.ts';
import type { WishesEdit } from './schema.ts';

type Reader = { readonly storehouseId: string; readonly personId: string };

/** Hours of the day in which letters disturb few. Common practice, no source. */
const USUAL_HOURS = { fromHour: 8, toHour: 20 };

/** How the actor is told things: as wished, or as everybody is until they say otherwise. */
export function readWishes(context: Context): Promise<OwnWishes> {
  return withTx(context, (tx) => loadWishes(tx, context.actor));
}

export async function loadWishes(tx: Tx, reader: Reader): Promise<OwnWishes> {
  const { storehouseId } = reader;
  return (await findWishes(tx, reader)) ?? usualWishes(tx, storehouseId);
}

export async function usualWishes(tx: Tx, storehouseId: string): Promise<OwnWishes> {
  const { language, timeZone } = await loadPlace(tx, storehouseId);
  return {
    ...USUAL_HOURS,
    ...{ language, timeZone, digestHour: null, isEmailOn: true, stoppedKinds: [], version: 0 },
  };
}

export function editWishes(context: Context, edit: WishesEdit): Promise<OwnWishes> {
  const { storehouseId, personId } = context.actor;
  const reader = { storehouseId, personId };
  return withTx(context, async (tx) => {
    const before = await loadWishes(tx, reader);
    const stoppedKinds = [...new Set(edit.stoppedKinds)].toSorted();
    const edited =
      before.version === edit.version ? await upsertWishes(tx, reader, { ...edit, stoppedKinds }) : undefined;
    if (edited) return edited;
    throw new Problem('stale-version', { newer: presentWishes(await loadWishes(tx, reader), context) });
  });
}

export { type Month, readMonth } from './use-cases-month.ts';
