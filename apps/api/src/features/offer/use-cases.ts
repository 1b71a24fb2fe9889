import type { Tx } from '@sheafbook/db';
import type { OfferRow } from '@sheafbook/db/tables';
import { planTurns } from '@sheafbook/giving';
import { assert } from '@sheafbook/units';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockContainers, refuseOffered } from '../container/queries.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { refuseUnfit } from './fit.ts';
import { isGiver, mayOfferOf } from './policy.ts';
import { priceContainers } from './price.ts';
import {
  endOffered,
  insertOffer,
  listOwned,
  lockOffer,
  type Owned,
  updateOffer,
  updateTurn,
} from './queries.ts';
import { loadOwnTurn, readOfferInside, readOffersInside, requireStanding } from './read.ts';
import type { OfferWish } from './schema.ts';
import { advanceTurns, askInOrder, toDates } from './turns.ts';

export { listForGiving } from './queries.ts';
export { listOpenToMe, type OfferView, readOfferInside } from './read.ts';

/** Common practice, no source. */
const LONGEST_DAYS = 90;

/** Offers whole containers of one food to the other members: those who lack it first, then everybody until it closes. */
export function offerContainers(context: Context, wish: OfferWish) {
  const { actor } = context;
  if (!mayOfferOf(actor, wish.of))
    throw new Problem(wish.of === 'store' ? 'duty-missing' : 'household-needed');
  const householdId = wish.of === 'store' ? null : actor.householdId;
  const offeredAt = context.now();
  const closesAt = closingOf(wish, offeredAt);
  return withTx(
    context,
    async (tx) => {
      const { storehouseId, personId } = actor;
      const owned = await lockOwned(tx, context, { ...wish, householdId });
      const [first] = owned;
      assert(first, 'the schema asks for a container');
      const prices = await priceContainers(tx, storehouseId, { householdId, owned, price: wish.price });
      const { turns, openAt } = planTurns({
        groups: await askInOrder(tx, context, { food: first.food, giverId: householdId }),
        ...{ offeredAt: offeredAt.getTime(), closesAt: closesAt.getTime() },
        ...{ windowHours: wish.windowHours, passedAt: new Map<string, number>() },
      });
      const { windowHours, goesToPantry, note } = wish;
      const offerId = await insertOffer(
        tx,
        {
          ...{ storehouseId, offerId: newId(context), householdId, foodId: first.food.foodId },
          ...{ priceKind: wish.price.kind, windowHours, offeredAt, openAt: new Date(openAt), closesAt },
          ...{ goesToPantry, note, offeredBy: personId },
        },
        {
          containers: owned.map(({ container: { containerId }, grams }, position) => {
            return { containerId, grams, priceMinorUnits: prices[position] ?? 0 };
          }),
          turns: turns.map(toDates),
        },
      );
      const firstAsked = turns.filter(({ groupNo }) => groupNo === 1).map((turn) => turn.householdId);
      await tellTurns(tx, context, { food: first.food, householdIds: firstAsked });
      return readOfferInside(tx, context, offerId);
    },
    { task: 'need-first' },
  );
}

function closingOf({ closesAt: text }: OfferWish, now: Date): Date {
  const closesAt = new Date(text);
  if (closesAt <= now)
    throw fieldProblem('invalid-input', 'closesAt', 'This time is past. Let it close later.');
  if (closesAt.getTime() > now.getTime() + LONGEST_DAYS * 86_400_000)
    throw fieldProblem('invalid-input', 'closesAt', `An offer closes within ${LONGEST_DAYS} days.`);
  return closesAt;
}

/** The containers, locked in their order: of this owner, of one food, shut, full of something, in no doubt and no offer. */
async function lockOwned(
  tx: Tx,
  context: Context,
  { containerIds, householdId }: { containerIds: readonly string[]; householdId: string | null },
): Promise<Owned[]> {
  const { storehouseId } = context.actor;
  await lockContainers(tx, storehouseId, containerIds);
  const ownerId = householdId ?? (await loadHouseOwners(tx, storehouseId)).commonId;
  const owned = await listOwned(tx, storehouseId, { containerIds, householdId, ownerId });
  if (owned.length < containerIds.length) throw new Problem('thing-not-found', { thing: 'container' });
  await refuseOffered(tx, storehouseId, { containerIds, now: context.now() });
  await refuseUnfit(
    tx,
    storehouseId,
    owned.map(({ container }) => container),
  );
  for (const { container, food, grams } of owned) {
    if (grams === 0)
      throw fieldProblem(
        'not-enough-left',
        'containerIds',
        `There is nothing left in ${container.containerCode}.`,
      );
    if (food.foodId !== owned[0]?.food.foodId)
      throw fieldProblem(
        'invalid-input',
        'containerIds',
        'Offer one food at a time; who is asked first goes by who lacks it.',
      );
  }
  return owned;
}

/** The reminder of an open offer says the same by letter, for turns that come by time too. */
export const YOUR_TURN =
  'Something is offered, and it is your turn to say first. The page of offers says until when.';

type Named = { readonly nameEn: string; readonly nameEs: string };

async function tellTurns(
  tx: Tx,
  context: Context,
  { food, householdIds }: { food: Named; householdIds: readonly string[] },
): Promise<void> {
  for (const householdId of householdIds)
    await writeNotice(tx, context, {
      kind: 'offer',
      audience: { to: 'household', householdId },
      about: food.nameEn,
      aboutEs: food.nameEs,
      says: YOUR_TURN,
    });
}

/** Takes back what nobody has taken; after the close, only that a pantry may have it. */
export function takeBackOffer(context: Context, offerId: string) {
  return withTx(context, async (tx) => {
    const offer = await lockOffer(tx, context.actor.storehouseId, offerId);
    if (!isGiver(context.actor, offer.householdId)) throw new Problem('thing-not-found', { thing: 'offer' });
    const now = context.now();
    if (offer.closesAt <= now) {
      if (!offer.goesToPantry) throw new Problem('offer-over');
      await updateOffer(tx, offer, { goesToPantry: false });
    } else if ((await endOffered(tx, offer, { endedAt: now, endedHow: 'taken-back' })).length === 0)
      throw new Problem('offer-taken');
    return readOfferInside(tx, context, offerId);
  });
}

/** Lets one's turn pass. Once a whole group has, it is the next one's turn at once. */
export function passOffer(context: Context, offerId: string) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(
    context,
    async (tx) => {
      const offer = await lockOffer(tx, storehouseId, offerId);
      const turn = await loadOwnTurn(tx, context, offer);
      requireStanding(context, offer, turn, ['your-turn']);
      assert(turn, 'whose turn it is has one');
      const view = await readOfferInside(tx, context, offerId);
      if (turn.passedAt !== null) return view;
      await updateTurn(tx, { storehouseId, offerId, householdId }, { passedAt: context.now() });
      const { comes, haveAllPassed } = await advanceTurns(tx, context, offer);
      await tellTurns(tx, context, { food: view.food, householdIds: comes });
      if (haveAllPassed) await tellGiver(tx, context, offer, { food: view.food, says: ALL_PASSED });
      return readOfferInside(tx, context, offerId);
    },
    { task: 'need-first' },
  );
}

const ALL_PASSED =
  'Everybody whose turn it was has let your offer pass. It is open to all members now, until it closes.';

/** Whoever offers hears of it: the household, or the coordinator for common stock. */
export async function tellGiver(
  tx: Tx,
  context: Context,
  { householdId }: OfferRow,
  { food, says }: { food: Named; says: string },
): Promise<void> {
  const audience =
    householdId === null
      ? ({ to: 'duty', duty: 'coordinator' } as const)
      : ({ to: 'household', householdId } as const);
  await writeNotice(tx, context, { kind: 'offer', audience, about: food.nameEn, aboutEs: food.nameEs, says });
}

/** What is offered to my household now, what it offers, what it took, and for the coordinator what the store offers. */
export function readOffers(context: Context) {
  return withTx(context, async (tx) => {
    await noteHelpersRead(tx, context, 'offers');
    return readOffersInside(tx, context);
  });
}

export function readOffer(context: Context, offerId: string) {
  return withTx(context, async (tx) => {
    await noteHelpersRead(tx, context, 'offers');
    return readOfferInside(tx, context, offerId);
  });
}
