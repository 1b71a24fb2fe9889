import type { readContainerPlan } from './use-cases.ts';

type Plan = Awaited<ReturnType<typeof readContainerPlan>>;

/** `plan` is null when nobody knows how heavy the food lies. */
export function presentPlan({ food, basis, shareGrams, listed, plan }: Plan) {
  return {
    food: { id: food.foodId, code: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs },
    basis,
    shareGrams,
    wishes: listed.map(({ wish, kind }) => ({
      kind: { id: kind.containerKindId, code: kind.kindCode, nameEn: kind.nameEn, nameEs: kind.nameEs },
      grams: wish.grams,
    })),
    plan: plan && {
      containers: plan.planned.map((planned) => ({
        kindId: planned.kindId,
        count: planned.containers,
        gramsEach: planned.perContainerGrams,
        grams: planned.grams,
        costMinorUnits: planned.costMinorUnits,
      })),
      remainderGrams: plan.remainderGrams,
    },
  };
}
