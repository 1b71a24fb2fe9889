import type { ContainerKindRow, FoodRow } from '@sheafbook/db/tables';
import { readKeepingClass } from '@sheafbook/foods';
import { judgeTreatment, MOST_MOISTURE_WITHOUT_OXYGEN, readBarrier, TREATMENTS } from '@sheafbook/keeping';
import type { Context } from '../../platform/context.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listAllContainerKinds } from '../container-kind/queries.ts';
import { listFoods } from '../food/queries.ts';

/** Each treatment with the container kinds and foods of this storehouse that it fits, and why not the others. */
export function findTreatments(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const kinds = await listAllContainerKinds(tx, storehouseId);
    const foods = await listFoods(tx, storehouseId, { limit: WHOLE_LIST, retired: 'no', format: 'json' });
    return TREATMENTS.map((treatment) => ({
      treatment,
      kinds: kinds.map((kind) => ({ kind, fit: judgeKind(treatment, kind) })),
      foods: foods.map((food) => ({ food, fit: judgeFood(treatment, food) })),
    }));
  });
}

type Treatment = (typeof TREATMENTS)[number];
export type JudgedTreatment = Awaited<ReturnType<typeof findTreatments>>[number];

/** One gram of a dry grain, so that only the wall of the container is judged. */
const judgeKind = ({ code }: Treatment, kind: ContainerKindRow) =>
  judgeTreatment(code, {
    keepingClass: 'whole-grain-hard',
    needsMoistureTest: false,
    moisturePercent: MOST_MOISTURE_WITHOUT_OXYGEN,
    barrier: readBarrier(kind.barrier),
    grams: 1,
  });

/** In a container that suits, and as dry as it has to be. */
const judgeFood = ({ code, barriers }: Treatment, food: FoodRow) =>
  judgeTreatment(code, {
    keepingClass: readKeepingClass(food.keepingClass),
    needsMoistureTest: false,
    moisturePercent: MOST_MOISTURE_WITHOUT_OXYGEN,
    barrier: barriers[0] ?? null,
    grams: 1,
  });
