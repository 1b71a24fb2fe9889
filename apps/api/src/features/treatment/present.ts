import { cautionOf, MISFIT_WORDS, NOT_TO_DO, type TreatmentFit } from '@sheafbook/keeping';
import type { JudgedTreatment } from './use-cases.ts';

/** Words stand in both languages, so that an answer that is kept can be shown in either. */
export function presentTreatments(all: readonly JudgedTreatment[]) {
  return { treatments: all.map(presentTreatment), notToDo: NOT_TO_DO };
}

function presentTreatment({ treatment, kinds, foods }: JudgedTreatment) {
  const { code, names, isOxygenFree, mostGrams, steps, source } = treatment;
  return {
    code,
    names,
    isOxygenFree,
    mostGrams,
    steps,
    source,
    cautions: treatment.cautions.map(cautionOf),
    containers: kinds.map(({ kind, fit }) => ({
      id: kind.containerKindId,
      nameEn: kind.nameEn,
      nameEs: kind.nameEs,
      ...presentFit(fit),
    })),
    foods: foods.map(({ food, fit }) => ({
      id: food.foodId,
      nameEn: food.nameEn,
      nameEs: food.nameEs,
      needsMoistureTest: food.needsMoistureTest && isOxygenFree,
      ...presentFit(fit),
    })),
  };
}

const presentFit = ({ verdict, misfits, nearest }: TreatmentFit) => ({
  verdict,
  why: misfits.map((misfit) => ({ misfit, say: MISFIT_WORDS[misfit] })),
  nearest,
});
