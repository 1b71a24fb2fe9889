import type { ContainerKindRow, ContainerRow, FoodRow } from '@sheafbook/db/tables';
import { readTreatment } from '@sheafbook/keeping';
import type { PostedEntry } from '../../platform/post-entry.ts';
import type { OwnBag, Shelved } from './queries.ts';
import type { ShelvedKept } from './with-kept.ts';

export function presentShelved({ container, kind, food, lot, grams }: Shelved) {
  return {
    id: container.containerId,
    code: container.containerCode,
    kind: { id: kind.containerKindId, code: kind.kindCode, nameEn: kind.nameEn, nameEs: kind.nameEs },
    food: { id: food.foodId, code: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs },
    lotId: lot.lotId,
    supplierMark: lot.supplierMark,
    originNote: lot.originNote,
    packedOn: container.packedOn,
    openedOn: container.openedOn,
    treatment: readTreatment(container.treatment),
    moistureTenths: container.moistureTenths,
    grams,
    note: container.note,
  };
}

export const presentShelf = ({ rows, next }: { rows: readonly ShelvedKept[]; next: string | null }) => ({
  containers: rows.map(presentShelvedKept),
  next,
});

export const presentShelvedKept = (row: ShelvedKept) => ({ ...presentShelved(row), ...row.stands });

/** One row a container, for a spreadsheet. */
export const toCsvRow = ({ container, kind, food, grams, stands }: ShelvedKept) => ({
  code: container.containerCode,
  kind: kind.nameEn,
  food: food.nameEn,
  grams,
  packedOn: container.packedOn,
  openedOn: container.openedOn,
  treatment: container.treatment,
  place: stands.place?.name ?? '',
  likelyDays: stands.keeping?.likelyDays ?? '',
  pastDays: stands.keeping?.pastDays ?? '',
});

export const presentTreated = ({ shelved, warnings }: { shelved: Shelved; warnings: readonly string[] }) => ({
  ...presentShelved(shelved),
  warnings: [...warnings],
});

export function presentFilled(filled: {
  entry: PostedEntry;
  containers: readonly ContainerRow[];
  gramsEach: number;
  kind: ContainerKindRow;
  food: FoodRow;
  warnings: readonly string[];
}) {
  return {
    entryId: filled.entry.entryId,
    entryNo: filled.entry.entryNo,
    containers: filled.containers.map((container) => ({
      id: container.containerId,
      code: container.containerCode,
      grams: filled.gramsEach,
    })),
    grams: filled.containers.length * filled.gramsEach,
    warnings: [...filled.warnings],
  };
}

export const presentOwnBag = ({ bag, food, buyName, ownGrams, isHeld }: OwnBag & { isHeld: boolean }) => ({
  bagId: bag.bagId,
  bagCode: bag.bagCode,
  bagNo: bag.bagNo,
  buyId: bag.buyId,
  buyName,
  food: {
    id: food.foodId,
    code: food.foodCode,
    nameEn: food.nameEn,
    nameEs: food.nameEs,
    bulkMicrogramsPerMillilitre: food.bulkMicrogramsPerMillilitre,
  },
  grams: ownGrams,
  isHeld,
});
