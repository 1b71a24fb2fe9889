import type { PhotoFacts } from './queries.ts';

export function presentPhoto(photo: PhotoFacts) {
  const { bagId, claimId, deliveryId, equipmentItemId } = photo;
  return {
    id: photo.photoId,
    buyId: photo.buyId,
    shows: shownBy(photo),
    thingId: bagId ?? claimId ?? deliveryId ?? equipmentItemId ?? '',
    widthPixels: photo.widthPixels,
    heightPixels: photo.heightPixels,
    note: photo.note,
    addedBy: photo.addedBy,
    addedAt: photo.addedAt.toISOString(),
  };
}

function shownBy({ bagId, claimId, deliveryId }: PhotoFacts) {
  if (bagId) return 'bag' as const;
  if (claimId) return 'claim' as const;
  return deliveryId ? ('delivery' as const) : ('equipment' as const);
}

/** A photo of a thing, with the part or the loan that it shows of it. */
export const presentEquipmentPhoto = (photo: PhotoFacts) => ({
  ...presentPhoto(photo),
  partId: photo.equipmentPartId,
  loanId: photo.loanId,
  moment: photo.moment,
});
