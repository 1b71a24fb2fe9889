import type { Tx } from '@sheafbook/db';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadEating } from '../coverage/use-cases.ts';
import type { Take } from '../kitchen/schema.ts';
import { takeInto } from '../kitchen/use-cases.ts';
import { listWarmth, loadPlace } from '../place/queries.ts';
import { warmthNow } from '../place/use-cases.ts';
import { type Rotation, reckonRotation, reckonStoreRotation, reckonWhatIf, type Wished } from './reckon.ts';
import type { WhatIf } from './schema.ts';
import { loadHomeStock, loadStoreStock, type RotationItem } from './stock.ts';

export { listNearDates, type NearLot } from './near-dates.ts';
export { presentRotation } from './present.ts';
export type { RotationItem } from './stock.ts';

/** What a household eats next, how fast, what it would not eat in time, and what otherwise would come of it. */
export function readRotation(context: Context, whatIf: WhatIf) {
  return withTx(context, async (tx) => {
    const { items, eating, todayOn } = await loadHome(tx, context);
    await noteHelpersRead(tx, context, 'eaters, places and stock');
    const rotation = reckonRotation(items, { eating, todayOn });
    const wished = await readWished(tx, context, whatIf);
    return { items, rotation, whatIf: otherwise(items, { rotation, wished, todayOn }) };
  });
}

/** The same of common stock, of which nobody eats. */
export function readStoreRotation(context: Context, whatIf: Omit<WhatIf, 'eatPercent'>) {
  const todayOn = todayOf(context);
  return withTx(context, async (tx) => {
    const items = await loadStoreStock(tx, context.actor.storehouseId, todayOn);
    const rotation = reckonStoreRotation(items, todayOn);
    const wished = await readWished(tx, context, whatIf);
    return { items, rotation, whatIf: otherwise(items, { rotation, wished, todayOn }) };
  });
}

/** Common stock as it is, for whoever reads it among other things. */
export async function lookAtStoreRotation(tx: Tx, storehouseId: string, todayOn: string) {
  const items = await loadStoreStock(tx, storehouseId, todayOn);
  return { items, rotation: reckonStoreRotation(items, todayOn), whatIf: null };
}

/** Takes a container to the kitchen, and says what of that food to eat next and what should have been opened before it. */
export function takeToKitchen(context: Context, containerId: string, take: Take) {
  return withTx(context, async (tx) => {
    const before = await queueOf(tx, context);
    const taken = await takeInto(tx, context, containerId, take);
    const { foodId } = taken.container.food;
    const place = before.findIndex(({ container }) => container?.containerId === containerId);
    const earlier = before
      .slice(0, Math.max(0, place))
      .find((item) => item.food.foodId === foodId && item.container !== null);
    const next = (await queueOf(tx, context)).find(
      (item) => item.food.foodId === foodId && item.container !== null,
    );
    return { ...taken, next: next ?? null, earlier: taken.wasOpenedOn === null ? (earlier ?? null) : null };
  });
}

async function queueOf(tx: Tx, context: Context) {
  const { items, eating, todayOn } = await loadHome(tx, context);
  return reckonRotation(items, { eating, todayOn }).queue;
}

async function loadHome(tx: Tx, context: Context) {
  const { storehouseId } = context.actor;
  const subject = { householdId: householdOf(context), todayOn: todayOf(context) };
  const items = await loadHomeStock(tx, storehouseId, subject);
  return { items, eating: await loadEating(tx, storehouseId, subject), todayOn: subject.todayOn };
}

function otherwise(
  items: readonly RotationItem[],
  { rotation, wished, todayOn }: { rotation: Rotation; wished: Wished; todayOn: string },
) {
  const { eatPercent, moveTo, repack, give } = wished;
  const isAsked = eatPercent !== 100 || moveTo !== null || repack || give;
  return isAsked ? reckonWhatIf(items, { wished, pace: rotation.pace, todayOn }) : null;
}

/** A place to move to is as warm as it is reckoned to be from now on. */
async function readWished(
  tx: Tx,
  context: Context,
  { eatPercent = 100, moveTo, repack, give }: WhatIf,
): Promise<Wished> {
  const { storehouseId, householdId } = context.actor;
  if (moveTo === undefined) return { eatPercent, moveTo: null, repack, give };
  const place = await loadPlace(tx, storehouseId, { placeId: moveTo, householdId });
  const { agesLikeTenths } = warmthNow(await listWarmth(tx, storehouseId, [moveTo]), todayOf(context));
  const there = { placeKey: moveTo, tenthsCelsius: agesLikeTenths, isLit: place.isLit };
  return { eatPercent, moveTo: there, repack, give };
}
