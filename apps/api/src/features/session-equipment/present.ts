import type { SessionEquipment } from './use-cases.ts';

export const presentSessionEquipment = ({ booked, items, outranked }: SessionEquipment) => ({
  booked,
  items: items.map(({ item, free, outranking, lateFree }) => ({
    ...{ id: item.equipmentItemId, name: item.name, free, outranking, lateFree },
  })),
  /** How many private loans gave way to what was booked just now. */
  outranked,
});
