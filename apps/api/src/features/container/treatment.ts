import type { ContainerKindRow, FoodRow } from '@sheafbook/db/tables';
import { readKeepingClass } from '@sheafbook/foods';
import {
  judgeTreatment,
  MISFIT_WORDS,
  readBarrier,
  type TreatmentCode,
  type TreatmentFit,
} from '@sheafbook/keeping';
import { Problem } from '../../platform/problem.ts';

type Treating = {
  readonly treatment: TreatmentCode | null;
  readonly moistureTenths: number | null;
  readonly gramsEach: number;
};

/** Why a treatment that is only to come is refused, and a word on one that is allowed and weak. */
export function judgeTreatmentToCome(treating: Treating, kind: ContainerKindRow, food: FoodRow): string[] {
  const fit = fitOf(treating, kind, food);
  if (fit?.verdict !== 'refused') return wordsOf(fit);
  const field = fit.misfits.includes('moisture-unknown') ? 'moistureTenths' : 'treatment';
  const message = wordsOf(fit)[0] ?? '';
  throw new Problem('treatment-does-not-fit', {
    detail: message,
    fields: [{ field, message }],
    misfits: fit.misfits,
    nearest: fit.nearest,
  });
}

/** What is worth knowing of a treatment that was given already. */
export const listTreatmentWarnings = (treating: Treating, kind: ContainerKindRow, food: FoodRow): string[] =>
  wordsOf(fitOf(treating, kind, food));

function fitOf({ treatment, moistureTenths, gramsEach }: Treating, kind: ContainerKindRow, food: FoodRow) {
  if (treatment === null) return null;
  return judgeTreatment(treatment, {
    keepingClass: readKeepingClass(food.keepingClass),
    needsMoistureTest: food.needsMoistureTest,
    moisturePercent: moistureTenths === null ? null : moistureTenths / 10,
    barrier: readBarrier(kind.barrier),
    grams: gramsEach,
  });
}

const wordsOf = (fit: TreatmentFit | null): string[] =>
  (fit?.misfits ?? []).map((misfit) => MISFIT_WORDS[misfit].en);
