import type { Tx } from '@sheafbook/db';
import {
  accounts,
  bags,
  containerKinds,
  eaters,
  foods,
  households,
  lots,
  type PackingSessionRow,
  type PackingSlotRow,
  packingBags,
  packingHands,
  packingPours,
  packingSessions,
  packingSlots,
  packingWishes,
  persons,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, gt, inArray, isNull, lt, lte, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import type { SessionQuery } from './schema.ts';

export { isYoungHand, listHands } from './queries-hands.ts';

type Facts = Partial<typeof packingSessions.$inferInsert>;

const isThis = (storehouseId: string, packingSessionId: string) =>
  and(eq(packingSessions.storehouseId, storehouseId), eq(packingSessions.packingSessionId, packingSessionId));

/** The newest first. */
export function listSessions(tx: Tx, storehouseId: string, { after, limit }: SessionQuery) {
  return tx
    .select()
    .from(packingSessions)
    .where(
      and(
        eq(packingSessions.storehouseId, storehouseId),
        after === undefined ? undefined : lt(packingSessions.packingSessionId, after),
      ),
    )
    .orderBy(desc(packingSessions.packingSessionId))
    .limit(limit + 1);
}

export async function loadSession(
  tx: Tx,
  storehouseId: string,
  sessionId: string,
): Promise<PackingSessionRow> {
  return found(await tx.select().from(packingSessions).where(isThis(storehouseId, sessionId)));
}

/** Alone with a session: whoever changes its slots or its stage stands in one line. */
export async function lockSession(
  tx: Tx,
  storehouseId: string,
  sessionId: string,
): Promise<PackingSessionRow> {
  return found(await tx.select().from(packingSessions).where(isThis(storehouseId, sessionId)).for('update'));
}

/** Many may pour at once, but nobody moves the session's stage meanwhile. */
export async function lockSessionForShare(
  tx: Tx,
  storehouseId: string,
  sessionId: string,
): Promise<PackingSessionRow> {
  return found(await tx.select().from(packingSessions).where(isThis(storehouseId, sessionId)).for('share'));
}

function found([session]: PackingSessionRow[]): PackingSessionRow {
  if (!session) throw new Problem('thing-not-found', { thing: 'packing session' });
  return session;
}

export async function insertSession(
  tx: Tx,
  row: typeof packingSessions.$inferInsert,
): Promise<PackingSessionRow> {
  return found(await tx.insert(packingSessions).values(row).returning());
}

export async function updateSession(tx: Tx, session: PackingSessionRow, change: Facts) {
  const rows = await tx
    .update(packingSessions)
    .set({ ...change, version: session.version + 1 })
    .where(isThis(session.storehouseId, session.packingSessionId))
    .returning();
  return found(rows);
}

export async function findSessionByName(tx: Tx, storehouseId: string, name: string) {
  const [row] = await tx
    .select()
    .from(packingSessions)
    .where(and(eq(packingSessions.storehouseId, storehouseId), eq(packingSessions.name, name)));
  return row;
}

/** What is wanted packed, with its food, its container and its household, by seat and in the order it was asked. */
export async function listWishes(
  tx: Tx,
  storehouseId: string,
  wish: { sessionId: string; householdId?: string | undefined },
) {
  return tx
    .select({ wish: packingWishes, food: foods, kind: containerKinds, household: households })
    .from(packingWishes)
    .innerJoin(foods, joinOn(foods, packingWishes, 'foodId'))
    .innerJoin(containerKinds, joinOn(containerKinds, packingWishes, 'containerKindId'))
    .innerJoin(households, joinOn(households, packingWishes, 'householdId'))
    .where(
      and(
        eq(packingWishes.storehouseId, storehouseId),
        eq(packingWishes.packingSessionId, wish.sessionId),
        wish.householdId === undefined ? undefined : eq(packingWishes.householdId, wish.householdId),
      ),
    )
    .orderBy(asc(households.seat), asc(packingWishes.position));
}
export type WishedPacking = Awaited<ReturnType<typeof listWishes>>[number];

export async function deleteWishes(
  tx: Tx,
  storehouseId: string,
  wish: { sessionId: string; householdId: string },
): Promise<void> {
  await tx
    .delete(packingWishes)
    .where(
      and(
        eq(packingWishes.storehouseId, storehouseId),
        eq(packingWishes.packingSessionId, wish.sessionId),
        eq(packingWishes.householdId, wish.householdId),
      ),
    );
}

export async function insertWishes(
  tx: Tx,
  rows: readonly (typeof packingWishes.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(packingWishes).values([...rows]);
}

/** What a household owns in bags, by food. */
export async function sumOwnGrams(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<Map<string, number>> {
  const rows = await tx
    .select({
      foodId: lots.foodId,
      grams: sql<number>`sum(${accounts.inflow} - ${accounts.outflow})`.mapWith(Number),
    })
    .from(accounts)
    .innerJoin(bags, joinOn(bags, accounts, 'bagId', 'vesselId'))
    .innerJoin(lots, joinOn(lots, accounts, 'lotId', 'unitId'))
    .where(and(eq(accounts.storehouseId, storehouseId), eq(accounts.ownerId, householdId)))
    .groupBy(lots.foodId);
  return new Map(rows.map(({ foodId, grams }) => [foodId, grams]));
}

/** How moist the bags are that a household owns of each food: a figure a bag, null where nobody measured. */
export async function listOwnMoistures(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<Map<string, (number | null)[]>> {
  const rows = await tx
    .select({ foodId: lots.foodId, tenths: bags.moistureTenthsPercent })
    .from(accounts)
    .innerJoin(bags, joinOn(bags, accounts, 'bagId', 'vesselId'))
    .innerJoin(lots, joinOn(lots, accounts, 'lotId', 'unitId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.ownerId, householdId),
        gt(accounts.inflow, accounts.outflow),
      ),
    );
  const of = new Map<string, (number | null)[]>();
  for (const { foodId, tenths } of rows) of.set(foodId, [...(of.get(foodId) ?? []), tenths]);
  return of;
}

const OPEN_SLOTS = ['booked', 'waiting'] as const;

/**
 * A session's times in the order in which they were asked for: `slots` are booked or wait, `freed` are free again because
 * nobody came for them.
 */
export async function listSlots(tx: Tx, storehouseId: string, sessionId: string) {
  const rows = await tx
    .select({ slot: packingSlots, household: households })
    .from(packingSlots)
    .innerJoin(households, joinOn(households, packingSlots, 'householdId'))
    .where(
      and(
        eq(packingSlots.storehouseId, storehouseId),
        eq(packingSlots.packingSessionId, sessionId),
        inArray(packingSlots.state, [...OPEN_SLOTS, 'not-come']),
      ),
    )
    .orderBy(asc(packingSlots.askedAt), asc(households.seat));
  const isFreed = ({ slot }: (typeof rows)[number]) => slot.state === 'not-come';
  return { slots: rows.filter((row) => !isFreed(row)), freed: rows.filter(isFreed) };
}
export type SlotOf = Awaited<ReturnType<typeof listSlots>>['slots'][number];

/** The running sessions with a time that has begun by a moment and that nobody came for as far as the slot itself says. */
export async function listSessionsUnmet(tx: Tx, storehouseId: string, begunBy: Date): Promise<string[]> {
  const rows = await tx
    .selectDistinct({ sessionId: packingSlots.packingSessionId })
    .from(packingSlots)
    .innerJoin(packingSessions, joinOn(packingSessions, packingSlots, 'packingSessionId'))
    .where(
      and(
        eq(packingSlots.storehouseId, storehouseId),
        eq(packingSlots.state, 'booked'),
        eq(packingSessions.stage, 'running'),
        isNull(packingSlots.cameAt),
        lte(packingSlots.startsAt, begunBy),
      ),
    )
    .orderBy(asc(packingSlots.packingSessionId));
  return rows.map(({ sessionId }) => sessionId);
}

/**
 * The households that are seen at a session: one whose time was ticked, whose bag was brought, whose food was poured, or one
 * of whose people came to help.
 */
export async function listHouseholdsHere(
  tx: Tx,
  storehouseId: string,
  sessionId: string,
): Promise<Set<string>> {
  const rows = await tx.execute<{ household_id: string }>(sql`
    select household_id from ${packingSlots}
    where storehouse_id = ${storehouseId} and packing_session_id = ${sessionId} and came_at is not null
    union select household_id from ${packingBags}
    where storehouse_id = ${storehouseId} and packing_session_id = ${sessionId}
    union select household_id from ${packingPours}
    where storehouse_id = ${storehouseId} and packing_session_id = ${sessionId}
    union select p.household_id from ${packingHands} h
    join ${persons} p on p.storehouse_id = ${storehouseId} and p.person_id = h.person_id
    where h.storehouse_id = ${storehouseId} and h.packing_session_id = ${sessionId} and h.state = 'came'
      and p.household_id is not null`);
  return new Set(rows.map((row) => row.household_id));
}

export async function insertSlot(tx: Tx, row: typeof packingSlots.$inferInsert): Promise<PackingSlotRow> {
  const [slot] = await tx.insert(packingSlots).values(row).returning();
  assert(slot, 'an insert returns its row');
  return slot;
}

export async function updateSlot(
  tx: Tx,
  slot: PackingSlotRow,
  change: Partial<
    Pick<PackingSlotRow, 'line' | 'state' | 'startsAt' | 'endsAt' | 'askedAt' | 'cameAt' | 'freedAt'>
  >,
): Promise<void> {
  await tx
    .update(packingSlots)
    .set(change)
    .where(
      and(
        eq(packingSlots.storehouseId, slot.storehouseId),
        eq(packingSlots.packingSlotId, slot.packingSlotId),
      ),
    );
}

/** What nobody of a household may meet. Readable in the task 'packing'; shown as a flag of a run, without a name. */
export async function listAllergens(
  tx: Tx,
  storehouseId: string,
  householdIds: readonly string[],
): Promise<Map<string, string[]>> {
  if (householdIds.length === 0) return new Map();
  const rows = await tx
    .select({
      householdId: eaters.householdId,
      allergens: eaters.excludedAllergens,
      avoidsGluten: eaters.avoidsGluten,
    })
    .from(eaters)
    .where(and(eq(eaters.storehouseId, storehouseId), inArray(eaters.householdId, [...householdIds])));
  const of = new Map<string, string[]>();
  for (const { householdId, allergens, avoidsGluten } of rows) {
    const own = [...allergens, ...(avoidsGluten ? ['gluten'] : [])];
    of.set(householdId, [...new Set([...(of.get(householdId) ?? []), ...own])].toSorted());
  }
  return of;
}

/**
 * Sessions that are not over by a moment, each with what a household and a person have in it: their slot that stands, and
 * whether they said to help. One statement, since every list of next steps asks for it.
 */
export async function listOwnSessions(
  tx: Tx,
  storehouseId: string,
  own: { since: Date; householdId: string | null; personId: string },
) {
  const { since, householdId, personId } = own;
  return tx
    .select({ session: packingSessions, slot: packingSlots, hand: packingHands })
    .from(packingSessions)
    .leftJoin(
      packingSlots,
      and(
        joinOn(packingSlots, packingSessions, 'packingSessionId'),
        householdId === null ? sql`false` : eq(packingSlots.householdId, householdId),
        inArray(packingSlots.state, [...OPEN_SLOTS]),
      ),
    )
    .leftJoin(
      packingHands,
      and(joinOn(packingHands, packingSessions, 'packingSessionId'), eq(packingHands.personId, personId)),
    )
    .where(and(eq(packingSessions.storehouseId, storehouseId), gt(packingSessions.endsAt, since)))
    .orderBy(asc(packingSessions.startsAt));
}
