import type { ContainerKindRow, FoodRow } from '@sheafbook/db/tables';
import { bulkOf, readKeepingClass } from '@sheafbook/foods';
import {
  judgeFromBags,
  judgeTreatment,
  MISFIT_WORDS,
  moistureOfBags,
  readBarrier,
  type TreatmentCode,
  type TreatmentFit,
} from '@sheafbook/keeping';
import { airInPack, chooseAbsorbers, judgeAbsorbers, nearestWay } from '@sheafbook/packing';
import { namedIn, namingProblem, Problem } from '../../platform/problem.ts';

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

/** What a line is to put into containers, and from which bags: the moisture of each as it was measured, null where it was not. */
export type ToPack = {
  readonly treatment: TreatmentCode;
  readonly gramsEach: number;
  readonly moistureTenths: readonly (number | null)[];
};

/** What is known of a food, as the judgement of a pack reads it. */
const readFood = (food: FoodRow) => ({
  keepingClass: readKeepingClass(food.keepingClass),
  needsMoistureTest: food.needsMoistureTest,
  ...bulkOf(food),
});

const percentsOf = ({ moistureTenths }: ToPack) =>
  moistureTenths.map((tenths) => (tenths === null ? null : tenths / 10));

/** The nearest combination of this storehouse's own containers that fits, as a refusal tells it; null when there is none. */
function nearestOf(
  toPack: ToPack,
  kind: ContainerKindRow,
  food: FoodRow,
  kinds: readonly ContainerKindRow[],
) {
  const { treatment, gramsEach } = toPack;
  const { moisturePercent } = moistureOfBags(percentsOf(toPack));
  const near = nearestWay(
    { kindId: kind.containerKindId, treatment, gramsEach },
    { ...readFood(food), needsMoistureTest: false, moisturePercent },
    kinds.map((one) => ({
      kindId: one.containerKindId,
      capacityMicrolitres: one.capacityMicrolitres,
      barrier: readBarrier(one.barrier),
    })),
  );
  return near && { containerKindId: near.kindId, treatment: near.treatment, gramsEach: near.gramsEach };
}

/**
 * Refuses what a line can't pack safely, at its field and with the nearest combination that fits; gives what is worth a word.
 * A moisture that nobody measured is only warned of, for bags are measured up to the moment when they are poured.
 */
export function judgeFromBagsAt(
  toPack: ToPack,
  { kind, food, kinds }: { kind: ContainerKindRow; food: FoodRow; kinds: readonly ContainerKindRow[] },
  field: string,
): { warnings: string[]; nearest: () => { nearest: ReturnType<typeof nearestOf> } } {
  const fit = fitFromBags(toPack, kind, food);
  const nearest = () => ({ nearest: nearestOf(toPack, kind, food, kinds) });
  if (fit.verdict !== 'refused') return { warnings: wordsOf(fit), nearest };
  const message = wordsOf(fit)[0] ?? '';
  throw new Problem('treatment-does-not-fit', {
    ...{ detail: message, fields: [{ field, message }], misfits: fit.misfits },
    ...nearest(),
  });
}

/** What is worth a word on what a line is to pack, also where it would be refused by now. */
export const listWarningsFromBags = (toPack: ToPack, kind: ContainerKindRow, food: FoodRow): string[] =>
  wordsOf(fitFromBags(toPack, kind, food));

const fitFromBags = (toPack: ToPack, kind: ContainerKindRow, food: FoodRow) =>
  judgeFromBags(
    toPack.treatment,
    { ...readFood(food), barrier: readBarrier(kind.barrier), grams: toPack.gramsEach },
    percentsOf(toPack),
  );

/** Refuses packets that take up less oxygen than a pack of this food holds; says which ones do. */
export function judgeAbsorbersIn(
  { gramsEach, absorberMillilitres }: { gramsEach: number; absorberMillilitres: number },
  kind: ContainerKindRow,
  food: FoodRow,
): void {
  const air = airInPack(gramsEach, kind, readFood(food));
  if (air === null) return;
  const { isEnough, needMillilitres } = judgeAbsorbers(air, absorberMillilitres);
  if (isEnough) return;
  const says = (language: 'en' | 'es') =>
    `${namedIn(language, kind)} with ${gramsEach} g of ${namedIn(language, food)} needs packets for ${Math.ceil(needMillilitres)} ml of oxygen; these take up ${absorberMillilitres} ml.`;
  throw namingProblem('treatment-does-not-fit', {
    ...{ field: 'absorberMillilitres', says },
    ...{
      misfits: ['absorber-too-small'],
      absorberMillilitres: chooseAbsorbers(air)?.ratedMillilitres ?? null,
    },
  });
}
