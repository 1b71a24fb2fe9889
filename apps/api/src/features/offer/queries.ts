import type { Tx } from '@sheafbook/db';
import {
  containerKinds,
  containers,
  eaters,
  foods,
  households,
  lots,
  type OfferRow,
  type OfferTurnRow,
  offerClaims,
  offerContainers,
  offers,
  offerTurns,
} from '@sheafbook/db/tables';
import { and, asc, desc, eq, gt, inArray, isNull, or, type SQL, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { shelf } from '../container/queries.ts';

/** Containers of one owner with what is in them, in the order of their making; another's are not there. */
export function listOwned(
  tx: Tx,
  storehouseId: string,
  wish: { containerIds: readonly string[]; householdId: string | null; ownerId: string },
) {
  return shelf(tx, storehouseId, wish.ownerId)
    .where(
      and(
        eq(containers.storehouseId, storehouseId),
        inArray(containers.containerId, [...wish.containerIds]),
        wish.householdId === null
          ? isNull(containers.householdId)
          : eq(containers.householdId, wish.householdId),
      ),
    )
    .orderBy(asc(containers.containerId));
}
export type Owned = Awaited<ReturnType<typeof listOwned>>[number];

/** Everybody who is here, with what the order of asking goes by. Readable in the task 'need-first' alone. */
export async function listToAsk(
  tx: Tx,
  storehouseId: string,
): Promise<{ householdId: string; seat: number; hasEaters: boolean; lastTookAt: Date | null }[]> {
  const ofHousehold = (table: typeof eaters | typeof offerClaims) =>
    sql`${table.storehouseId} = ${storehouseId} and ${table.householdId} = household.household_id`;
  return tx
    .select({
      householdId: households.householdId,
      seat: households.seat,
      hasEaters: sql<boolean>`exists (select from ${eaters} where ${ofHousehold(eaters)})`,
      lastTookAt:
        sql`(select max(${offerClaims.claimedAt}) from ${offerClaims} where ${ofHousehold(offerClaims)})`.mapWith(
          offerClaims.claimedAt,
        ),
    })
    .from(households)
    .where(and(eq(households.storehouseId, storehouseId), isNull(households.leftOn)))
    .orderBy(households.seat);
}

export async function insertOffer(
  tx: Tx,
  offer: typeof offers.$inferInsert,
  inside: {
    containers: readonly { containerId: string; grams: number; priceMinorUnits: number }[];
    turns: readonly { householdId: string; groupNo: number; fromAt: Date; untilAt: Date }[];
  },
): Promise<string> {
  const { storehouseId, offeredAt, closesAt } = offer;
  const offerId = offer.offerId ?? '';
  await tx.insert(offers).values(offer);
  await tx
    .insert(offerContainers)
    .values(inside.containers.map((row) => ({ ...row, storehouseId, offerId, offeredAt, closesAt })));
  if (inside.turns.length > 0)
    await tx.insert(offerTurns).values(inside.turns.map((turn) => ({ ...turn, storehouseId, offerId })));
  return offerId;
}

const isThis = (storehouseId: string, offerId: string) =>
  and(eq(offers.storehouseId, storehouseId), eq(offers.offerId, offerId));

export async function loadOffer(tx: Tx, storehouseId: string, offerId: string): Promise<OfferRow> {
  const [row] = await tx.select().from(offers).where(isThis(storehouseId, offerId));
  if (!row) throw new Problem('thing-not-found', { thing: 'offer' });
  return row;
}

/** Alone with an offer: whoever takes, passes or takes back stands in one line. */
export async function lockOffer(tx: Tx, storehouseId: string, offerId: string): Promise<OfferRow> {
  const [row] = await tx.select().from(offers).where(isThis(storehouseId, offerId)).for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'offer' });
  return row;
}

/** The household's own turn; that of others is nobody's to see. */
export async function findTurn(
  tx: Tx,
  { storehouseId, offerId }: Pick<OfferRow, 'storehouseId' | 'offerId'>,
  householdId: string,
): Promise<OfferTurnRow | undefined> {
  const [row] = await tx
    .select()
    .from(offerTurns)
    .where(
      and(
        eq(offerTurns.storehouseId, storehouseId),
        eq(offerTurns.offerId, offerId),
        eq(offerTurns.householdId, householdId),
      ),
    );
  return row;
}

/** All turns of an offer, in their order. Readable in the task 'need-first' alone. */
export function listTurns(tx: Tx, { storehouseId, offerId }: OfferRow): Promise<OfferTurnRow[]> {
  return tx
    .select()
    .from(offerTurns)
    .where(and(eq(offerTurns.storehouseId, storehouseId), eq(offerTurns.offerId, offerId)))
    .orderBy(offerTurns.groupNo, offerTurns.householdId);
}

export async function updateTurn(
  tx: Tx,
  turn: Pick<OfferTurnRow, 'storehouseId' | 'offerId' | 'householdId'>,
  change: Partial<Pick<OfferTurnRow, 'passedAt' | 'fromAt' | 'untilAt'>>,
): Promise<void> {
  await tx
    .update(offerTurns)
    .set(change)
    .where(
      and(
        eq(offerTurns.storehouseId, turn.storehouseId),
        eq(offerTurns.offerId, turn.offerId),
        eq(offerTurns.householdId, turn.householdId),
      ),
    );
}

export async function updateOffer(
  tx: Tx,
  { storehouseId, offerId }: OfferRow,
  change: Partial<Pick<OfferRow, 'openAt' | 'goesToPantry'>>,
): Promise<void> {
  await tx.update(offers).set(change).where(isThis(storehouseId, offerId));
}

/** Ends what still stands in an offer; tells which containers that were. */
export async function endOffered(
  tx: Tx,
  { storehouseId, offerId }: OfferRow,
  end: { containerIds?: readonly string[]; endedAt: Date; endedHow: 'taken' | 'taken-back' },
): Promise<string[]> {
  const { containerIds, endedAt, endedHow } = end;
  const rows = await tx
    .update(offerContainers)
    .set({ endedAt, endedHow })
    .where(
      and(
        eq(offerContainers.storehouseId, storehouseId),
        eq(offerContainers.offerId, offerId),
        containerIds === undefined ? undefined : inArray(offerContainers.containerId, [...containerIds]),
        isNull(offerContainers.endedAt),
      ),
    )
    .returning({ containerId: offerContainers.containerId });
  return rows.map(({ containerId }) => containerId);
}

export async function insertClaims(
  tx: Tx,
  claims: readonly (typeof offerClaims.$inferInsert)[],
): Promise<void> {
  await tx.insert(offerClaims).values([...claims]);
}

/** A container changes hands where it stands. */
export async function updateContainerOwner(
  tx: Tx,
  { storehouseId, containerIds }: { storehouseId: string; containerIds: readonly string[] },
  householdId: string,
): Promise<void> {
  await tx
    .update(containers)
    .set({ householdId })
    .where(
      and(eq(containers.storehouseId, storehouseId), inArray(containers.containerId, [...containerIds])),
    );
}

const givers = alias(households, 'giver');
const takers = alias(households, 'taker');

/**
 * What stands or stood in offers, a row a container, the newest offer first. Turn and claim are those that the reader may
 * see: a household its own turn, giver and taker the claim.
 */
function listOffered(tx: Tx, storehouseId: string, reader: string | null, where: SQL | undefined) {
  const turn = offerTurns;
  return tx
    .select({
      ...{ offer: offers, part: offerContainers, container: containers, kind: containerKinds, food: foods },
      ...{ lot: lots, turn, claim: offerClaims, giverName: givers.name, takerName: takers.name },
    })
    .from(offers)
    .innerJoin(offerContainers, joinOn(offerContainers, offers, 'offerId'))
    .innerJoin(containers, joinOn(containers, offerContainers, 'containerId'))
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, offers, 'foodId'))
    .leftJoin(
      turn,
      and(joinOn(turn, offers, 'offerId'), reader === null ? sql`false` : eq(turn.householdId, reader)),
    )
    .leftJoin(
      offerClaims,
      and(joinOn(offerClaims, offers, 'offerId'), eq(offerClaims.containerId, offerContainers.containerId)),
    )
    .leftJoin(givers, joinOn(givers, offers, 'householdId'))
    .leftJoin(takers, joinOn(takers, offerClaims, 'householdId'))
    .where(and(eq(offers.storehouseId, storehouseId), where))
    .orderBy(desc(offers.offerId), asc(containers.containerCode));
}
export type Offered = Awaited<ReturnType<typeof listOffered>>[number];

const isOf = (householdId: string | null) =>
  householdId === null ? isNull(offers.householdId) : eq(offers.householdId, householdId);

/** The offers of one giver, the ended ones too, the last first. */
export function listOffersOf(
  tx: Tx,
  storehouseId: string,
  { householdId, reader }: { householdId: string | null; reader: string | null },
) {
  return listOffered(tx, storehouseId, reader, isOf(householdId));
}

/** What others offer and is not over, and the household's turn in it, come or not. */
export function listOffersOfOthers(
  tx: Tx,
  storehouseId: string,
  { householdId, now }: { householdId: string; now: Date },
) {
  const isOthers = or(isNull(offers.householdId), sql`${offers.householdId} <> ${householdId}`);
  return listOffered(tx, storehouseId, householdId, and(isOthers, gt(offers.closesAt, now)));
}

/** What this household took. */
export function listTaken(tx: Tx, storehouseId: string, householdId: string) {
  return listOffered(tx, storehouseId, householdId, eq(offerClaims.householdId, householdId));
}

export const listThisOffer = (tx: Tx, { storehouseId, offerId }: OfferRow, reader: string | null) =>
  listOffered(tx, storehouseId, reader, eq(offers.offerId, offerId));

/**
 * Whole containers that nobody took while they were offered and whose owner said that a pantry may have them then: still
 * shut, still with something in them, still the owner's, and in no later offer.
 */
export async function listForGiving(
  tx: Tx,
  storehouseId: string,
  now: Date,
): Promise<{ containerId: string; offerId: string; householdId: string | null }[]> {
  const moment = now.toISOString();
  const rows = await tx.execute<{ container_id: string; offer_id: string; household_id: string | null }>(sql`
    select p.container_id, o.offer_id, o.household_id
    from book.offer o
    join book.offer_container p on p.storehouse_id = ${storehouseId} and p.offer_id = o.offer_id
    join book.container c on c.storehouse_id = ${storehouseId} and c.container_id = p.container_id
    where o.storehouse_id = ${storehouseId} and o.goes_to_pantry and o.closes_at <= ${moment}::timestamptz
      and p.ended_at is null and c.opened_on is null and c.household_id is not distinct from o.household_id
      and exists (select from book.account a where a.storehouse_id = ${storehouseId} and a.vessel_id = c.container_id
        and a.inflow > a.outflow)
      and not exists (select from book.offer_container later where later.storehouse_id = ${storehouseId}
        and later.container_id = p.container_id and later.offered_at >= p.closes_at)
    order by c.container_code`);
  return rows.map((row) => ({
    ...{ containerId: row.container_id, offerId: row.offer_id, householdId: row.household_id },
  }));
}
