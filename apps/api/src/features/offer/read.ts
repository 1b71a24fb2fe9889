import type { Tx } from '@sheafbook/db';
import type { OfferRow, OfferTurnRow } from '@sheafbook/db/tables';
import { type OfferStanding, offerStanding } from '@sheafbook/giving';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { listMayNotEat } from '../coverage/use-cases.ts';
import { isGiver, mayOfferCommonStock } from './policy.ts';
import {
  findTurn,
  listOffersOf,
  listOffersOfOthers,
  listTaken,
  listThisOffer,
  loadOffer,
  type Offered,
} from './queries.ts';

/** An offer as one reader may see it: its containers, how it stands to the reader, and who at its table may not eat this. */
export type OfferView = {
  readonly offer: OfferRow;
  readonly food: Offered['food'];
  readonly isMine: boolean;
  readonly standing: OfferStanding;
  readonly turn: OfferTurnRow | null;
  readonly parts: readonly Offered[];
  readonly mayNotEat: readonly string[];
};

function toViews(
  context: Context,
  rows: readonly Offered[],
  mayNotEat: ReadonlyMap<string, string[]>,
): OfferView[] {
  const offerIds = [...new Set(rows.map(({ offer }) => offer.offerId))];
  return offerIds.flatMap((offerId) => {
    const parts = rows.filter(({ offer }) => offer.offerId === offerId);
    const [first] = parts;
    if (!first) return [];
    const { offer, food, turn } = first;
    const isMine = isGiver(context.actor, offer.householdId);
    const standing = standingOf(context, offer, turn);
    return [{ offer, food, isMine, standing, turn, parts, mayNotEat: mayNotEat.get(food.foodId) ?? [] }];
  });
}

const standingOf = (context: Context, offer: OfferRow, turn: OfferTurnRow | null): OfferStanding =>
  offerStanding(
    turn && { fromAt: turn.fromAt.getTime(), untilAt: turn.untilAt.getTime() },
    { openAt: offer.openAt.getTime(), closesAt: offer.closesAt.getTime() },
    context.now().getTime(),
  );

/** Whether a reader sees somebody else's offer at all: not before its turn, and no more once it has let it pass. */
const isShown = ({ standing, turn }: OfferView): boolean =>
  standing === 'your-turn' || standing === 'for-all'
    ? true
    : standing === 'with-others' && turn?.passedAt === null;

const isStillThere = ({ parts }: OfferView): boolean => parts.some(({ part }) => part.endedAt === null);

async function viewsFor(tx: Tx, context: Context, rows: readonly Offered[]): Promise<OfferView[]> {
  const { storehouseId, householdId } = context.actor;
  if (householdId === null || rows.length === 0) return toViews(context, rows, new Map());
  const foods = [...new Map(rows.map(({ food }) => [food.foodId, food])).values()];
  return toViews(context, rows, await listMayNotEat(tx, storehouseId, { householdId, foods }));
}

/** What others offer and my household may take now, or may again once it is everybody's. */
export async function listOpenToMe(tx: Tx, context: Context): Promise<OfferView[]> {
  const { storehouseId, householdId } = context.actor;
  if (householdId === null) return [];
  const rows = await listOffersOfOthers(tx, storehouseId, { householdId, now: context.now() });
  const views = await viewsFor(tx, context, rows);
  return views.filter((view) => isShown(view) && isStillThere(view));
}

export async function readOffersInside(tx: Tx, context: Context) {
  const { actor } = context;
  const { storehouseId, householdId } = actor;
  const of = async (giver: string | null) =>
    viewsFor(tx, context, await listOffersOf(tx, storehouseId, { householdId: giver, reader: householdId }));
  return {
    toMe: await listOpenToMe(tx, context),
    mine: householdId === null ? [] : await of(householdId),
    ofStore: mayOfferCommonStock(actor) ? await of(null) : null,
    taken:
      householdId === null ? [] : await viewsFor(tx, context, await listTaken(tx, storehouseId, householdId)),
  };
}
export type OffersRead = Awaited<ReturnType<typeof readOffersInside>>;

/** One offer: the giver's own, one that has come to the reader, or one of which it took something. */
export async function readOfferInside(tx: Tx, context: Context, offerId: string): Promise<OfferView> {
  const { storehouseId, householdId } = context.actor;
  const offer = await loadOffer(tx, storehouseId, offerId);
  const [view] = await viewsFor(tx, context, await listThisOffer(tx, offer, householdId));
  const hasTaken = view?.parts.some(({ claim }) => claim !== null && claim.householdId === householdId);
  if (!view || !(view.isMine || hasTaken || (householdId !== null && view.standing !== 'not-yet')))
    throw new Problem('thing-not-found', { thing: 'offer' });
  return view;
}

export async function loadOwnTurn(tx: Tx, context: Context, offer: OfferRow): Promise<OfferTurnRow | null> {
  const { householdId } = context.actor;
  return householdId === null ? null : ((await findTurn(tx, offer, householdId)) ?? null);
}

/** Refuses whoever the offer does not stand open to. Before its turn a household is told of no offer at all. */
export function requireStanding(
  context: Context,
  offer: OfferRow,
  turn: OfferTurnRow | null,
  allowed: readonly OfferStanding[],
): void {
  if (offer.householdId !== null && offer.householdId === context.actor.householdId)
    throw new Problem('offer-is-yours');
  const standing = standingOf(context, offer, turn);
  if (allowed.includes(standing)) return;
  if (standing === 'not-yet') throw new Problem('thing-not-found', { thing: 'offer' });
  throw new Problem(standing === 'over' ? 'offer-over' : 'not-your-turn');
}
