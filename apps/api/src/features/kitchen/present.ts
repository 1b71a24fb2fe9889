import type { PostedEntry } from '../../platform/post-entry.ts';
import type { Shelved } from '../container/queries.ts';
import type { KitchenLot, TakeRow } from './queries.ts';

type InKitchen = KitchenLot & { readonly sinceOn: string | null };

export const presentPutBack = ({ entry, container }: { entry: PostedEntry; container: Shelved }) => ({
  entryId: entry.entryId,
  entryNo: entry.entryNo,
  container: presentContainer(container),
});

export function presentKitchen({ lots, takes }: { lots: readonly InKitchen[]; takes: readonly TakeRow[] }) {
  return {
    lots: lots.map(({ lotId, food, grams, sinceOn, holdId }) => ({
      ...{ lotId, food: presentFood(food), grams, sinceOn, holdId },
    })),
    takes: takes.map(({ entryId, onDay, lotId, grams, containerId, containerCode }) => ({
      ...{ entryId, onDay, lotId, grams },
      container: { id: containerId, code: containerCode },
    })),
  };
}

const presentContainer = ({ container, grams }: Pick<Shelved, 'container' | 'grams'>) => ({
  id: container.containerId,
  code: container.containerCode,
  lotId: container.lotId,
  openedOn: container.openedOn,
  grams,
});

const presentFood = ({ foodId, foodCode, nameEn, nameEs }: KitchenLot['food']) => ({
  ...{ id: foodId, code: foodCode, nameEn, nameEs },
});
