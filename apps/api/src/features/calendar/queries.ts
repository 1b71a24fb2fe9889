import type { Tx } from '@sheafbook/db';
import {
  buys,
  type CalendarFeedRow,
  calendarEvents,
  calendarFeeds,
  depositAsks,
  pickUps,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, gte, isNotNull, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import type { Appointment } from './appointment.ts';
import { keyOf, type ToldEvent } from './events.ts';

export async function insertFeed(tx: Tx, feed: typeof calendarFeeds.$inferInsert): Promise<CalendarFeedRow> {
  const [row] = await tx.insert(calendarFeeds).values(feed).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** A person's feeds that have not ended, the oldest first. */
export async function listFeeds(tx: Tx, storehouseId: string, personId: string): Promise<CalendarFeedRow[]> {
  return tx
    .select()
    .from(calendarFeeds)
    .where(
      and(
        eq(calendarFeeds.storehouseId, storehouseId),
        eq(calendarFeeds.personId, personId),
        isNull(calendarFeeds.endedAt),
      ),
    )
    .orderBy(asc(calendarFeeds.calendarFeedId));
}

export async function updateFeed(
  tx: Tx,
  { storehouseId, calendarFeedId }: CalendarFeedRow,
  set: Partial<Pick<CalendarFeedRow, 'secretSha256' | 'renewedAt' | 'endedAt'>>,
): Promise<CalendarFeedRow> {
  const [row] = await tx
    .update(calendarFeeds)
    .set(set)
    .where(
      and(eq(calendarFeeds.storehouseId, storehouseId), eq(calendarFeeds.calendarFeedId, calendarFeedId)),
    )
    .returning();
  assert(row, 'the feed was read before');
  return row;
}

/** A feed as its secret leads to it, with whose it is. */
export type OpenFeed = {
  storehouse_id: string;
  storehouse_name: string;
  scope: string;
  item_kind: string | null;
  item_id: string | null;
  language: string;
  person_id: string;
  login_id: string;
  household_id: string | null;
  currency: string;
  time_zone: string;
};

export async function findOpenFeed(tx: Tx, secretSha256: string): Promise<OpenFeed | undefined> {
  const [row] = await tx.execute<OpenFeed>(sql`select * from door.find_calendar_feed(${secretSha256})`);
  return row;
}

/** Everybody's events and those of the household that is acted for: the policy of the table keeps others' back. */
export async function listTold(tx: Tx, storehouseId: string): Promise<ToldEvent[]> {
  const rows = await tx.select().from(calendarEvents).where(eq(calendarEvents.storehouseId, storehouseId));
  return rows.map(({ eventKey, content, sequence, modifiedAt }) => ({
    key: eventKey,
    appointment: content as Appointment,
    sequence,
    modifiedAt,
  }));
}

/** Two who write the same down at once write it once: the second finds it told already. */
export async function tellEvents(
  tx: Tx,
  storehouseId: string,
  changes: { appointments: readonly Appointment[]; at: Date },
): Promise<void> {
  if (changes.appointments.length === 0) return;
  await tx
    .insert(calendarEvents)
    .values(
      changes.appointments
        .map((appointment) => ({
          storehouseId,
          eventKey: keyOf(appointment),
          householdId: appointment.householdId,
          content: appointment,
          modifiedAt: changes.at,
        }))
        .toSorted((a, b) => (a.eventKey < b.eventKey ? -1 : 1)), // one order of locks for all
    )
    .onConflictDoUpdate({
      target: [calendarEvents.storehouseId, calendarEvents.eventKey],
      set: {
        content: sql`excluded.content`,
        sequence: sql`${calendarEvents.sequence} + 1`,
        modifiedAt: sql`excluded.modified_at`,
      },
      setWhere: sql`${calendarEvents.content} is distinct from excluded.content`,
    });
}

/** Buys of which something is to come or is not long past. */
export async function listBuysSince(tx: Tx, storehouseId: string, sinceOn: string) {
  return tx
    .select()
    .from(buys)
    .where(
      and(
        eq(buys.storehouseId, storehouseId),
        // The order comes after the gathering, and the landing after the order; a day more for the zone.
        sql`coalesce(${buys.landingOn}, ${buys.orderOn}) + 1 >= ${sinceOn}::date`,
      ),
    )
    .orderBy(asc(buys.buyId));
}

export async function listPickUpsSince(
  tx: Tx,
  storehouseId: string,
  of: { householdId: string; sinceOn: string },
) {
  return tx
    .select({ pickUp: pickUps, buy: buys })
    .from(pickUps)
    .innerJoin(buys, joinOn(buys, pickUps, 'buyId'))
    .where(
      and(
        eq(pickUps.storehouseId, storehouseId),
        eq(pickUps.householdId, of.householdId),
        isNotNull(pickUps.endsAt),
        gte(pickUps.endsAt, sql`${of.sinceOn}::date - interval '1 day'`),
      ),
    )
    .orderBy(asc(pickUps.pickUpId));
}

/** What is asked of a household for buys that wait for their deposits, and not waived. */
export async function listOpenDepositAsks(tx: Tx, storehouseId: string, householdId: string) {
  return tx
    .select({ ask: depositAsks, buy: buys })
    .from(depositAsks)
    .innerJoin(buys, joinOn(buys, depositAsks, 'buyId'))
    .where(
      and(
        eq(depositAsks.storehouseId, storehouseId),
        eq(depositAsks.householdId, householdId),
        isNull(depositAsks.waivedBy),
        eq(buys.stage, 'fixed'),
      ),
    )
    .orderBy(asc(buys.buyId));
}
