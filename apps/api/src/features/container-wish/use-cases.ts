import type { Tx } from '@sheafbook/db';
import { bulkOf, planContainers } from '@sheafbook/foods';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockBuyForShare, requireStage } from '../buy/queries.ts';
import { loadContainerKind } from '../container-kind/queries.ts';
import { findPledgeOfLine } from '../pledge/queries.ts';
import { listPiecePrices } from '../supply/queries.ts';
import {
  deleteWishes,
  findAllottedGrams,
  insertWishes,
  listWishes,
  loadLineWithFood,
  sumAwardedGrams,
} from './queries.ts';
import type { Wishes } from './schema.ts';

type Line = { buyId: string; buyLineId: string };

/** Puts a household's wishes for one line in place of those before, and answers with what they come to. */
export function changeWishes(context: Context, line: Line, { wishes }: Wishes) {
  const own = ownLine(context, line);
  return withTx(context, async (tx) => {
    const buy = await lockBuyForShare(tx, own.storehouseId, line.buyId);
    await loadLineWithFood(tx, own);
    requireStage(buy, 'planning', 'gathering', 'fixed', 'ordered', 'landed', 'shared-out');
    for (const { containerKindId } of wishes) await loadContainerKind(tx, own.storehouseId, containerKindId);
    await deleteWishes(tx, own);
    const enteredBy = context.actor.personId;
    await insertWishes(
      tx,
      wishes.map((wish, position) => ({ ...own, ...wish, position, enteredBy })),
    );
    return planLine(tx, own);
  });
}

export function readContainerPlan(context: Context, line: Line) {
  return withTx(context, (tx) => planLine(tx, ownLine(context, line)));
}

const ownLine = (context: Context, line: Line) => ({
  ...line,
  storehouseId: context.actor.storehouseId,
  householdId: householdOf(context),
});

/** The plan is for what was awarded, else for what is allotted, else for what was pledged. */
async function planLine(tx: Tx, own: ReturnType<typeof ownLine>) {
  const { food } = await loadLineWithFood(tx, own);
  const listed = await listWishes(tx, own);
  const awarded = await sumAwardedGrams(tx, own);
  const allotted = awarded ?? (await findAllottedGrams(tx, own));
  const shareGrams = allotted ?? (await findPledgeOfLine(tx, own.storehouseId, own))?.wantedGrams ?? 0;
  const basis = awarded !== null ? 'awarded' : allotted !== null ? 'allotted' : 'pledged';
  const { containerPrice } = await listPiecePrices(tx, own.storehouseId);
  const plan = planContainers(
    shareGrams,
    listed.map(({ wish, kind }) => ({
      kindId: kind.containerKindId,
      capacityMicrolitres: kind.capacityMicrolitres,
      priceMinorUnits: containerPrice(kind),
      grams: wish.grams,
    })),
    bulkOf(food),
  );
  return { food, basis, shareGrams, listed, plan };
}
