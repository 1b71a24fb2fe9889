import type { Tx } from '@sheafbook/db';
import {
  households,
  type PackingHandRow,
  packingHands,
  packingSessions,
  packingStood,
  persons,
} from '@sheafbook/db/tables';
import { and, asc, desc, eq, inArray, lt, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** Everybody who said something about coming, by their household's seat, then by name; who has no household comes last. */
export async function listHands(tx: Tx, storehouseId: string, sessionId: string) {
  return tx
    .select({ hand: packingHands, name: persons.name })
    .from(packingHands)
    .innerJoin(persons, joinOn(persons, packingHands, 'personId'))
    .leftJoin(households, joinOn(households, persons, 'householdId'))
    .where(and(eq(packingHands.storehouseId, storehouseId), eq(packingHands.packingSessionId, sessionId)))
    .orderBy(asc(households.seat), asc(persons.name), asc(packingHands.personId));
}
export type HandOf = Awaited<ReturnType<typeof listHands>>[number];

export async function putHand(tx: Tx, row: typeof packingHands.$inferInsert): Promise<void> {
  const { state, maySeam, mayLift, seatedOnly, isUnder16, saidAt } = row;
  await tx
    .insert(packingHands)
    .values(row)
    .onConflictDoUpdate({
      target: [packingHands.storehouseId, packingHands.packingSessionId, packingHands.personId],
      set: { state, maySeam, mayLift, seatedOnly, isUnder16, saidAt },
    });
}

/** Whether somebody said for a session that they are under 16. */
export async function isYoungHand(
  tx: Tx,
  storehouseId: string,
  { sessionId, personId }: { sessionId: string; personId: string },
): Promise<boolean> {
  const rows = await tx
    .select({ isUnder16: packingHands.isUnder16 })
    .from(packingHands)
    .where(
      and(
        eq(packingHands.storehouseId, storehouseId),
        eq(packingHands.packingSessionId, sessionId),
        eq(packingHands.personId, personId),
        eq(packingHands.isUnder16, true),
      ),
    );
  return rows.length > 0;
}

export async function updateHand(tx: Tx, hand: PackingHandRow, state: string): Promise<void> {
  await tx
    .update(packingHands)
    .set({ state })
    .where(
      and(
        eq(packingHands.storehouseId, hand.storehouseId),
        eq(packingHands.packingSessionId, hand.packingSessionId),
        eq(packingHands.personId, hand.personId),
      ),
    );
}

/** How often each of these people came of the times that they had said so, over sessions that are over. */
export async function listShows(tx: Tx, storehouseId: string, personIds: readonly string[]) {
  if (personIds.length === 0) return new Map<string, { shows: number; signed: number }>();
  const rows = await tx
    .select({
      personId: packingHands.personId,
      shows: sql<number>`count(*) filter (where ${packingHands.state} = 'came')`.mapWith(Number),
      signed: sql<number>`count(*)`.mapWith(Number),
    })
    .from(packingHands)
    .innerJoin(packingSessions, joinOn(packingSessions, packingHands, 'packingSessionId'))
    .where(
      and(
        eq(packingHands.storehouseId, storehouseId),
        inArray(packingHands.personId, [...personIds]),
        inArray(packingHands.state, ['came', 'stayed-away']),
        inArray(packingSessions.stage, ['signed', 'settled']),
      ),
    )
    .groupBy(packingHands.personId);
  return new Map(rows.map(({ personId, shows, signed }) => [personId, { shows, signed }]));
}

/** Where each of these people stood most at the last session that they came to before a day; all of what ties. */
export async function listLastStations(
  tx: Tx,
  storehouseId: string,
  { personIds, before }: { personIds: readonly string[]; before: Date },
): Promise<Map<string, string[]>> {
  if (personIds.length === 0) return new Map();
  const rows = await tx
    .select({
      personId: packingStood.personId,
      sessionId: packingStood.packingSessionId,
      station: packingStood.station,
      spells: packingStood.spells,
    })
    .from(packingStood)
    .innerJoin(packingSessions, joinOn(packingSessions, packingStood, 'packingSessionId'))
    .where(
      and(
        eq(packingStood.storehouseId, storehouseId),
        inArray(packingStood.personId, [...personIds]),
        lt(packingSessions.startsAt, before),
      ),
    )
    .orderBy(desc(packingSessions.startsAt), desc(packingStood.packingSessionId), desc(packingStood.spells));
  const first = new Map<string, (typeof rows)[number]>();
  for (const row of rows) if (!first.has(row.personId)) first.set(row.personId, row);
  const isMost = (row: (typeof rows)[number]) => {
    const most = first.get(row.personId);
    return row.sessionId === most?.sessionId && row.spells === most.spells;
  };
  const of = new Map<string, string[]>();
  for (const { personId, station } of rows.filter(isMost))
    of.set(personId, [...(of.get(personId) ?? []), station]);
  return of;
}

export async function insertStood(
  tx: Tx,
  rows: readonly (typeof packingStood.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(packingStood).values([...rows]);
}
