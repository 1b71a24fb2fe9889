import type { Tx } from '@sheafbook/db';
import type { BagRow, BuyRow, DeliveryRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForUpdate } from '../buy/queries.ts';
import { countNumberedBags, listCounts } from '../delivery/queries.ts';
import { listBagsOfDelivery, lockOpenDelivery, requireLanding } from '../delivery/use-cases.ts';
import { listOpenHolds, lockBagToHold } from '../hold/queries.ts';
import { beginHold } from '../hold/use-cases.ts';
import { keepKeying } from '../keying/use-cases.ts';
import { draftBags } from './draft-bags.ts';
import { presentBag } from './present.ts';
import { insertBags, listSeenBags, loadSeenBag, type SeenBag, updateBag } from './queries.ts';
import { landAfterAll, landBags, sendBack } from './receipt.ts';
import type { BagEdit, BagQuery, NewBag, NewBags } from './schema.ts';
import { mustBeHeld } from './weighing.ts';

/**
 * Numbers the bags of a delivery, makes or finds their lots, and lands what was accepted: net grams, nobody's yet.
 * Alone with the buy, so that two who number the same list at once can't pass its count together.
 */
export function numberBags(context: Context, deliveryId: string, wish: NewBags) {
  const { bags: wishes } = wish;
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const { delivery, buy } = await lockOpenDelivery(tx, context, deliveryId);
    const offered = await listBagsOfDelivery(tx, delivery, {
      bagOfferIds: wishes.map((wish) => wish.bagOfferId),
      fieldOf: (at) => `bags.${at}.bagOfferId`,
    });
    await refuseMoreThanCounted(tx, delivery, wishes);
    const rows = await draftBags(tx, context, { delivery, offered, wishes });
    const bags = await insertBags(tx, rows);
    const accepted = bags.filter((bag) => bag.decision !== 'refused');
    await landBags(tx, context, { bags: accepted, arrivedOn: delivery.arrivedOn });
    for (const bag of bags.filter(mustBeHeld))
      await beginHold(tx, context, { bag, reason: conditionReason(bag) });
    const bagIds = rows.map((row) => row.bagId);
    await keepKeying(tx, context, { what: 'bag', subjectIds: bagIds, buy, pen: wish });
    const seen = await listSeenBags(tx, storehouseId, { bagIds });
    return rows.flatMap(({ bagId }) => seen.filter(({ bag }) => bag.bagId === bagId));
  });
}

async function refuseMoreThanCounted(tx: Tx, delivery: DeliveryRow, wishes: readonly NewBag[]) {
  const { storehouseId, deliveryId } = delivery;
  const counts = await listCounts(tx, storehouseId, [deliveryId]);
  const numbered = await countNumberedBags(tx, storehouseId, deliveryId);
  for (const [at, { bagOfferId }] of wishes.entries()) {
    const counted = counts.find((count) => count.bagOfferId === bagOfferId)?.countedBags ?? 0;
    const number = (numbered.get(bagOfferId) ?? 0) + 1;
    if (number > counted)
      throw fieldProblem(
        'does-not-add-up',
        `bags.${at}.bagOfferId`,
        `${counted} bags of this size were counted, and this would be number ${number}.`,
      );
    numbered.set(bagOfferId, number);
  }
}

/**
 * Changes what was written of a bag. A bag that is refused after all goes back gram by gram, unless anything of it
 * has moved on; one that is accepted after all lands now.
 */
export function editBag(context: Context, bagId: string, edit: BagEdit): Promise<SeenBag> {
  const { version, ...facts } = edit;
  return withBag(context, bagId, async (tx, bag) => {
    if (bag.version !== version) throw await staleBag(tx, bag);
    const isRefused = facts.decision === 'refused';
    if (isRefused && bag.decision !== 'refused') await sendBack(tx, context, bag);
    const edited = await updateBag(tx, bag, facts);
    if (!isRefused && bag.decision === 'refused') await landAfterAll(tx, context, edited);
    const isHeld = (await listOpenHolds(tx, bag.storehouseId, [bagId])).length > 0;
    if (mustBeHeld(edited) && !isHeld)
      await beginHold(tx, context, { bag: edited, reason: conditionReason(edited) });
    return loadSeenBag(tx, bag.storehouseId, bagId);
  });
}

export function readBag(context: Context, bagId: string): Promise<SeenBag> {
  return withTx(context, (tx) => loadSeenBag(tx, context.actor.storehouseId, bagId));
}

export function readBags(context: Context, buyId: string, { after, limit }: BagQuery): Promise<SeenBag[]> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    return listSeenBags(tx, storehouseId, { buyId, after, limit: limit + 1 });
  });
}

/** Locks a bag's buy, then the bag. `buyId` is the buy that somebody believes the bag to be of. */
export function withBag<Result>(
  context: Context,
  bagId: string,
  work: (tx: Tx, bag: BagRow, buy: BuyRow) => Promise<Result>,
  options: { buyId?: string | undefined; isAtAnyStage?: boolean } = {},
): Promise<Result> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const { bag: seen } = await loadSeenBag(tx, storehouseId, bagId);
    if (options.buyId !== undefined && options.buyId !== seen.buyId)
      throw fieldProblem('bag-of-another-buy', 'buyId', `Bag ${seen.bagCode} belongs to another buy.`);
    const buy = await lockBuyForUpdate(tx, storehouseId, seen.buyId);
    if (!options.isAtAnyStage) requireLanding(buy);
    return work(tx, await lockBagToHold(tx, storehouseId, bagId), buy);
  });
}

export async function staleBag(tx: Tx, bag: BagRow): Promise<Problem> {
  return new Problem('stale-version', {
    newer: presentBag(await loadSeenBag(tx, bag.storehouseId, bag.bagId)),
  });
}

const conditionReason = ({ condition }: BagRow): string =>
  `It came in ${CONDITION_WORDS[condition] ?? condition}.`;
const CONDITION_WORDS: Record<string, string> = { infested: 'with insects', odour: 'with an odour' };
