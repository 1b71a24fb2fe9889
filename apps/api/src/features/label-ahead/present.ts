import type { ContainerRow } from '@sheafbook/db/tables';
import { spellCode } from '@sheafbook/units';
import type { LabelFacts } from '../label/use-cases.ts';

const named = ({ containerId, containerCode: code, packedOn }: ContainerRow) => ({
  ...{ containerId, code, spelled: spellCode(code), packedOn },
});

export const presentBlank = (labels: readonly LabelFacts[]) => ({
  labels: labels.map(({ container, kind, food, household }) => ({
    ...named(container),
    food: { id: food.foodId, nameEn: food.nameEn, nameEs: food.nameEs },
    kind: { id: kind.containerKindId, nameEn: kind.nameEn, nameEs: kind.nameEs },
    householdId: household.householdId,
    household: household.name,
  })),
});

export const presentMade = (made: readonly ContainerRow[]) => ({ labels: made.map(named) });
