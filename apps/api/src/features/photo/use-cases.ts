import type { BuyRow, PhotoRow } from '@sheafbook/db/tables';
import { hasDuty } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForShare } from '../buy/queries.ts';
import {
  deletePhoto,
  findBuyOfThing,
  insertPhoto,
  listPhotos,
  loadPhoto,
  type PhotoFacts,
} from './queries.ts';
import { readJpeg } from './read-jpeg.ts';
import type { PhotoQuery, PhotoWish } from './schema.ts';
import { refuseSettledLoan, requireSeesLoanOf } from './use-cases-equipment.ts';

export { addEquipmentPhoto, readEquipmentPhotos } from './use-cases-equipment.ts';

/**
 * Keeps a photo beside the bag, the claim or the delivery that it shows. What a camera writes into a picture beside the
 * picture, such as where it was taken, is never kept: a phone shrinks it away, and here it is cut off once more.
 */
export function addPhoto(context: Context, buyId: string, wish: PhotoWish): Promise<PhotoFacts> {
  const { storehouseId, personId } = context.actor;
  const { shows, thingId, note } = wish;
  const { content, widthPixels, heightPixels } = readJpeg(wish.contentBase64);
  return withTx(context, async (tx) => {
    await lockBuyForShare(tx, storehouseId, buyId);
    if ((await findBuyOfThing(tx, storehouseId, { shows, thingId })) !== buyId)
      throw new Problem('thing-not-found', { thing: shows });
    return insertPhoto(tx, {
      ...{ storehouseId, buyId, content, widthPixels, heightPixels, note },
      photoId: newId(context),
      bagId: shows === 'bag' ? thingId : null,
      claimId: shows === 'claim' ? thingId : null,
      deliveryId: shows === 'delivery' ? thingId : null,
      addedBy: personId,
      addedAt: context.now(),
    });
  });
}

export function readPhotos(context: Context, buyId: string, query: PhotoQuery): Promise<PhotoFacts[]> {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      await loadBuy(tx, storehouseId, buyId);
      return listPhotos(tx, storehouseId, { buyId, query });
    },
    { isReadOnly: true },
  );
}

/** One photo with its bytes, for those who may see what it shows. */
export function readPhoto(context: Context, photoId: string): Promise<PhotoRow> {
  return withTx(context, async (tx) => {
    const photo = await loadPhoto(tx, context.actor.storehouseId, photoId);
    await requireSeesLoanOf(tx, context, photo);
    return photo;
  });
}

/** Takes away a photo that was taken by mistake. Once the buy is closed or the loan settled its photos stay. */
export function removePhoto(context: Context, photoId: string): Promise<void> {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const photo = await loadPhoto(tx, storehouseId, photoId);
    if (photo.addedBy !== personId && !hasDuty(context.actor, 'coordinator'))
      throw new Problem('duty-missing', {
        detail: 'Whoever took a photo takes it away again, or a coordinator does.',
      });
    if (photo.buyId === null) await refuseSettledLoan(tx, photo);
    else refuseClosed(await lockBuyForShare(tx, storehouseId, photo.buyId));
    await deletePhoto(tx, storehouseId, photoId);
  });
}

function refuseClosed({ stage }: BuyRow): void {
  if (stage === 'closed')
    throw new Problem('buy-stage-wrong', {
      stage,
      detail: 'The buy is closed, and its photos stay with it.',
    });
}
