import type { Tx } from '@sheafbook/db';
import { equipmentParts, photos } from '@sheafbook/db/tables';
import { and, eq, isNull } from 'drizzle-orm';
import { Problem } from '../../platform/problem.ts';
import { type PhotoFacts, photoFacts } from './queries.ts';

/** A part that a thing has, or had when its photo was taken. */
export async function requirePartOfItem(
  tx: Tx,
  storehouseId: string,
  { itemId, partId }: { itemId: string; partId: string },
): Promise<void> {
  const [row] = await tx
    .select({ partId: equipmentParts.equipmentPartId })
    .from(equipmentParts)
    .where(
      and(
        eq(equipmentParts.storehouseId, storehouseId),
        eq(equipmentParts.equipmentItemId, itemId),
        eq(equipmentParts.equipmentPartId, partId),
      ),
    );
  if (!row) throw new Problem('thing-not-found', { thing: 'part' });
}

/** The photos of a loan, or, without one, those of a thing and its parts as they are. */
export function listPhotosOfItem(
  tx: Tx,
  storehouseId: string,
  of: { itemId: string; loanId: string | undefined },
): Promise<PhotoFacts[]> {
  return tx
    .select(photoFacts)
    .from(photos)
    .where(
      and(
        eq(photos.storehouseId, storehouseId),
        eq(photos.equipmentItemId, of.itemId),
        of.loanId === undefined ? isNull(photos.loanId) : eq(photos.loanId, of.loanId),
      ),
    )
    .orderBy(photos.photoId);
}
