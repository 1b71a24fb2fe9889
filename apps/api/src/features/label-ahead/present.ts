import type { ContainerRow } from '@sheafbook/db/tables';
import { spellCode } from '@sheafbook/units';
import type { LabelsOfDay } from './use-cases.ts';

const named = ({ containerId, containerCode: code, packedOn }: ContainerRow) => ({
  ...{ containerId, code, spelled: spellCode(code), packedOn },
});

export const presentLabels = ({ blank, spent }: LabelsOfDay) => ({
  labels: blank.map(({ container, kind, food, household }) => ({
    ...named(container),
    food: { id: food.foodId, nameEn: food.nameEn, nameEs: food.nameEs },
    kind: { id: kind.containerKindId, nameEn: kind.nameEn, nameEs: kind.nameEs },
    householdId: household.householdId,
    household: household.name,
  })),
  /** Codes whose pour was taken back: no can has them, and none will. */
  spent: spent.map(({ container, household }) => ({ ...named(container), household: household.name })),
});

export const presentMade = (made: readonly ContainerRow[]) => ({ labels: made.map(named) });
