import { readTreatment, treatmentOf } from '@sheafbook/keeping';
import { spellCode } from '@sheafbook/units';
import type { LabelFacts } from './use-cases.ts';

/** Everything that a label says, as data: the sheet prints these figures and no others. */
export function presentLabel({
  container,
  kind,
  food,
  lot,
  buyName,
  household,
  grams,
  eatFirst,
  offerYear,
  inspectByOn,
  metOnLine,
}: LabelFacts) {
  const treatment = readTreatment(container.treatment);
  return {
    containerId: container.containerId,
    code: container.containerCode,
    spelled: spellCode(container.containerCode),
    food: { id: food.foodId, nameEn: food.nameEn, nameEs: food.nameEs },
    kind: { nameEn: kind.nameEn, nameEs: kind.nameEs },
    // The buy that it came by and the mark of its supplier, or how else it came: enough to find it in a recall.
    lot: [buyName ?? lot.originNote, lot.supplierMark].filter((part) => part !== '').join(' '),
    owner: { name: household.name, seat: household.seat },
    packedOn: container.packedOn,
    treatment: treatment && { code: treatment, names: treatmentOf(treatment).names },
    grams,
    allergens: food.allergens,
    gluten: food.gluten,
    /** Allergens of what ran before it on its packing line that day; a label made ahead can't know them. */
    metOnLine,
    eatFirst,
    /** The year in which others are offered it; null where nobody knows how long it keeps. */
    offerYear,
    inspectByOn,
    isOxygenFree: treatment !== null && treatmentOf(treatment).isOxygenFree,
  };
}
export type Label = ReturnType<typeof presentLabel>;

export const presentLabels = (labels: readonly LabelFacts[]) => ({ labels: labels.map(presentLabel) });
