import type { SessionEquipment } from './use-cases.ts';

export const presentSessionEquipment = ({ booked, items, outranked }: SessionEquipment) => ({
  booked,
  items: items.map(({ item, free, outranking }) => ({
    ...{ id: item.equipmentItemId, name: item.name, free, outranking },
  })),
  /** How many private loans gave way to what was booked just now. */
  outranked,
});
