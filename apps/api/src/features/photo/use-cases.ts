import type { BuyRow, PhotoRow } from '@sheafbook/db/tables';
import { hasDuty } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForShare } from '../buy/queries.ts';
import { bareJpeg } from './jpeg.ts';
import {
  deletePhoto,
  findBuyOfThing,
  insertPhoto,
  listPhotos,
  loadPhoto,
  type PhotoFacts,
} from './queries.ts';
import { MOST_PHOTO_BYTES, type PhotoQuery, type PhotoWish } from './schema.ts';

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

function readJpeg(contentBase64: string) {
  const bytes = Buffer.from(contentBase64, 'base64');
  if (bytes.length > MOST_PHOTO_BYTES)
    throw fieldProblem('invalid-input', 'contentBase64', 'A photo is 2 MB at most. Make it smaller first.');
  const jpeg = bareJpeg(bytes);
  if (!jpeg)
    throw fieldProblem(
      'invalid-input',
      'contentBase64',
      'This is no whole JPEG picture. Take the photo again.',
    );
  return jpeg;
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

/** One photo with its bytes. */
export function readPhoto(context: Context, photoId: string): Promise<PhotoRow> {
  return withTx(context, (tx) => loadPhoto(tx, context.actor.storehouseId, photoId), { isReadOnly: true });
}

/** Takes away a photo that was taken by mistake. Once the buy is closed its photos stay as its entries do. */
export function removePhoto(context: Context, photoId: string): Promise<void> {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const photo = await loadPhoto(tx, storehouseId, photoId);
    if (photo.addedBy !== personId && !hasDuty(context.actor, 'coordinator'))
      throw new Problem('duty-missing', {
        detail: 'Whoever took a photo takes it away again, or a coordinator does.',
      });
    refuseClosed(await lockBuyForShare(tx, storehouseId, photo.buyId));
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
