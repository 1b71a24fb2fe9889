import type { Tx } from '@sheafbook/db';
import { readTreatment } from '@sheafbook/keeping';
import { judgeContainerFill, judgeFromBagsAt, listWarningsFromBags } from '../container/use-cases.ts';
import { listAllContainerKinds, loadContainerKind } from '../container-kind/queries.ts';
import { loadFood } from '../food/queries.ts';
import { listOwnMoistures, type WishedPacking } from './queries.ts';
import type { WishList } from './schema.ts';

type Moistures = ReadonlyMap<string, readonly (number | null)[]>;

/** Refuses what a line can't pack: a container too small, or a treatment that is not safe or does nothing there. */
export async function judgeWishes(
  tx: Tx,
  storehouseId: string,
  { householdId, wishes }: { householdId: string } & WishList,
): Promise<void> {
  const kinds = await listAllContainerKinds(tx, storehouseId);
  const moistures = await listOwnMoistures(tx, storehouseId, householdId);
  for (const [at, wish] of wishes.entries()) {
    const food = await loadFood(tx, storehouseId, wish.foodId);
    const kind = await loadContainerKind(tx, storehouseId, wish.containerKindId);
    const toPack = { ...wish, moistureTenths: moistures.get(food.foodId) ?? [null] };
    const { nearest } = judgeFromBagsAt(toPack, { kind, food, kinds }, `wishes.${at}.treatment`);
    judgeContainerFill(wish.gramsEach, kind, food, `wishes.${at}.gramsEach`, nearest);
  }
}

/** What is worth a word on a wish that stands, also where a bag proved too moist since. */
export function warningsOf({ wish, food, kind }: WishedPacking, moistures: Moistures): string[] {
  const treatment = readTreatment(wish.treatment) ?? 'none';
  const moistureTenths = moistures.get(food.foodId) ?? [null];
  return listWarningsFromBags({ treatment, gramsEach: wish.gramsEach, moistureTenths }, kind, food);
}
