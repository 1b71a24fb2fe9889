import type { PhotoFacts } from './queries.ts';

export function presentPhoto(photo: PhotoFacts) {
  const { bagId, claimId, deliveryId } = photo;
  return {
    id: photo.photoId,
    buyId: photo.buyId,
    shows: bagId ? ('bag' as const) : claimId ? ('claim' as const) : ('delivery' as const),
    thingId: bagId ?? claimId ?? deliveryId ?? '',
    widthPixels: photo.widthPixels,
    heightPixels: photo.heightPixels,
    note: photo.note,
    addedBy: photo.addedBy,
    addedAt: photo.addedAt.toISOString(),
  };
}
