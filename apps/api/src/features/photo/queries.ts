import type { Tx } from '@sheafbook/db';
import { bags, claims, deliveries, type PhotoRow, photos } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, getTableColumns, gt } from 'drizzle-orm';
import { Problem } from '../../platform/problem.ts';
import type { PhotoQuery, PhotoWish } from './schema.ts';

/** What is told of a photo; its bytes are fetched one photo at a time. */
export type PhotoFacts = Omit<PhotoRow, 'content'>;

const { content: _bytes, ...facts } = getTableColumns(photos);
export const photoFacts = facts;

const COLUMN_OF = { bag: photos.bagId, claim: photos.claimId, delivery: photos.deliveryId } as const;

/** The buy of the thing that a photo is to show. */
export async function findBuyOfThing(
  tx: Tx,
  storehouseId: string,
  { shows, thingId }: Pick<PhotoWish, 'shows' | 'thingId'>,
): Promise<string> {
  const found = {
    bag: () =>
      tx
        .select({ buyId: bags.buyId })
        .from(bags)
        .where(and(eq(bags.storehouseId, storehouseId), eq(bags.bagId, thingId))),
    claim: () =>
      tx
        .select({ buyId: claims.buyId })
        .from(claims)
        .where(and(eq(claims.storehouseId, storehouseId), eq(claims.claimId, thingId))),
    delivery: () =>
      tx
        .select({ buyId: deliveries.buyId })
        .from(deliveries)
        .where(and(eq(deliveries.storehouseId, storehouseId), eq(deliveries.deliveryId, thingId))),
  };
  const [row] = await found[shows]();
  if (!row) throw new Problem('thing-not-found', { thing: shows });
  return row.buyId;
}

export async function insertPhoto(tx: Tx, photo: typeof photos.$inferInsert): Promise<PhotoFacts> {
  const [row] = await tx.insert(photos).values(photo).returning(facts);
  assert(row, 'an insert returns its row');
  return row;
}

export function listPhotos(
  tx: Tx,
  storehouseId: string,
  { buyId, query }: { buyId: string; query: PhotoQuery },
): Promise<PhotoFacts[]> {
  const { shows, thingId, after, limit } = query;
  return tx
    .select(facts)
    .from(photos)
    .where(
      and(
        eq(photos.storehouseId, storehouseId),
        eq(photos.buyId, buyId),
        shows && thingId ? eq(COLUMN_OF[shows], thingId) : undefined,
        after ? gt(photos.photoId, after) : undefined,
      ),
    )
    .orderBy(photos.photoId)
    .limit(limit + 1);
}

export async function loadPhoto(tx: Tx, storehouseId: string, photoId: string): Promise<PhotoRow> {
  const [row] = await tx
    .select()
    .from(photos)
    .where(and(eq(photos.storehouseId, storehouseId), eq(photos.photoId, photoId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'photo' });
  return row;
}

export async function deletePhoto(tx: Tx, storehouseId: string, photoId: string): Promise<void> {
  await tx.delete(photos).where(and(eq(photos.storehouseId, storehouseId), eq(photos.photoId, photoId)));
}
