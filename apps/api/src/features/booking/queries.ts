import type { Tx } from '@sheafbook/db';
import {
  type BookingRow,
  bookings,
  type EquipmentWishRow,
  equipmentItems,
  equipmentUnits,
  equipmentWishes,
  households,
  loans,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, gt, inArray, isNull, lt, lte, ne, or, type SQL, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { foodsBefore, ownFoods } from './queries-foods.ts';

/** States that hold a piece, as the constraint `booking_one_at_a_time` has them. */
export const HOLDING = ['offered', 'booked', 'out', 'returned'];
/** States that are not over. */
export const OPEN = ['asked', 'offered', 'booked', 'out'];

const isThis = (storehouseId: string, bookingId: string) =>
  and(eq(bookings.storehouseId, storehouseId), eq(bookings.bookingId, bookingId));

/** The bookings of a storehouse that fit all conditions. */
const selectBookings = (tx: Tx, storehouseId: string, ...conditions: readonly (SQL | undefined)[]) =>
  tx
    .select()
    .from(bookings)
    .where(and(eq(bookings.storehouseId, storehouseId), ...conditions));

export async function insertBooking(tx: Tx, row: typeof bookings.$inferInsert): Promise<BookingRow> {
  const [inserted] = await tx.insert(bookings).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

export async function loadBooking(tx: Tx, storehouseId: string, bookingId: string): Promise<BookingRow> {
  const [row] = await tx.select().from(bookings).where(isThis(storehouseId, bookingId));
  if (!row) throw new Problem('thing-not-found', { thing: 'booking' });
  return row;
}

/** Under the lock of its item. */
export async function updateBooking(
  tx: Tx,
  booking: BookingRow,
  change: Partial<typeof bookings.$inferInsert>,
): Promise<BookingRow> {
  const [row] = await tx
    .update(bookings)
    .set({ ...change, version: booking.version + 1 })
    .where(isThis(booking.storehouseId, booking.bookingId))
    .returning();
  assert(row, 'the booking was read before, under the lock of its item');
  return row;
}

export type Taken = BookingRow & { readonly unitNo: number };

/**
 * What holds the pieces of some things at any moment from `from` to `to`, and whatever is out: a loan that is late holds
 * its piece on. Found by its instants, since row-level security lets no range operator
 * look into an index (ledger-notes 2b).
 */
export async function listTaken(
  tx: Tx,
  storehouseId: string,
  of: { itemIds: readonly string[]; from: Date; to: Date },
): Promise<Taken[]> {
  const rows = await tx
    .select({ booking: bookings, unitNo: equipmentUnits.unitNo })
    .from(bookings)
    .innerJoin(equipmentUnits, joinOn(equipmentUnits, bookings, 'equipmentUnitId'))
    .where(
      and(
        eq(bookings.storehouseId, storehouseId),
        inArray(bookings.equipmentItemId, [...of.itemIds]),
        inArray(bookings.state, HOLDING),
        lt(bookings.blockedFrom, of.to),
        or(gt(bookings.blockedTo, of.from), eq(bookings.state, 'out')),
      ),
    )
    .orderBy(asc(bookings.startsAt), asc(equipmentUnits.unitNo));
  return rows.map(({ booking, unitNo }) => ({ ...booking, unitNo }));
}

export type BookingQuery = {
  readonly householdId?: string;
  readonly itemId?: string;
  readonly bookingId?: string;
  readonly unitId?: string;
  readonly sessionId?: string;
  /** Those that end after this. */
  readonly since?: Date;
  readonly isOpen?: boolean;
};

/** When the piece of a booking is due from whoever has it out now; null where nobody else has. Where `bookings` is joined. */
const outUntil = sql<Date | null>`(
  select l.due_at from ${loans} l
  where l.storehouse_id = ${bookings.storehouseId} and l.equipment_unit_id = ${bookings.equipmentUnitId}
    and l.in_at is null and l.booking_id <> ${bookings.bookingId})`.mapWith(loans.dueAt);

/** Bookings with their thing, piece and household, in the order of their times. */
export async function listBookings(tx: Tx, storehouseId: string, of: BookingQuery) {
  return tx
    .select({
      booking: bookings,
      item: equipmentItems,
      unit: equipmentUnits,
      seat: households.seat,
      householdName: households.name,
      foods: ownFoods,
      foodsBefore,
      outUntil,
    })
    .from(bookings)
    .innerJoin(equipmentItems, joinOn(equipmentItems, bookings, 'equipmentItemId'))
    .innerJoin(equipmentUnits, joinOn(equipmentUnits, bookings, 'equipmentUnitId'))
    .leftJoin(households, joinOn(households, bookings, 'householdId'))
    .where(
      and(
        eq(bookings.storehouseId, storehouseId),
        of.householdId === undefined ? undefined : eq(bookings.householdId, of.householdId),
        of.itemId === undefined ? undefined : eq(bookings.equipmentItemId, of.itemId),
        of.bookingId === undefined ? undefined : eq(bookings.bookingId, of.bookingId),
        of.unitId === undefined ? undefined : eq(bookings.equipmentUnitId, of.unitId),
        of.sessionId === undefined ? undefined : eq(bookings.sessionId, of.sessionId),
        of.since === undefined ? undefined : or(gt(bookings.endsAt, of.since), eq(bookings.state, 'out')),
        of.isOpen ? inArray(bookings.state, OPEN) : undefined,
      ),
    )
    .orderBy(asc(bookings.startsAt), asc(equipmentUnits.unitNo), asc(bookings.bookingId));
}
export type ListedBooking = Awaited<ReturnType<typeof listBookings>>[number];

/** A household's booking of a thing that is not over. */
export async function findOpenBooking(
  tx: Tx,
  storehouseId: string,
  of: { itemId: string; householdId: string },
): Promise<BookingRow | undefined> {
  const [row] = await selectBookings(
    tx,
    storehouseId,
    eq(bookings.equipmentItemId, of.itemId),
    eq(bookings.householdId, of.householdId),
    inArray(bookings.state, OPEN),
  ).limit(1);
  return row;
}

/** Who is to get a piece straight from a booking, agreed or only asked. */
export async function listRelaysFrom(tx: Tx, from: BookingRow): Promise<BookingRow[]> {
  return selectBookings(
    tx,
    from.storehouseId,
    eq(bookings.relayFromId, from.bookingId),
    inArray(bookings.state, ['asked', 'booked']),
  );
}

/** The bookings that a session made and that still hold something, by thing, so that all lock them in one order. */
export async function listBookingsOfSession(
  tx: Tx,
  storehouseId: string,
  sessionId: string,
): Promise<BookingRow[]> {
  return selectBookings(
    tx,
    storehouseId,
    eq(bookings.sessionId, sessionId),
    inArray(bookings.state, HOLDING),
  ).orderBy(asc(bookings.equipmentItemId), asc(bookings.bookingId));
}

/** The next booking of a piece that holds it after another one. */
export async function findNextOnUnit(tx: Tx, booking: BookingRow): Promise<BookingRow | undefined> {
  const [row] = await selectBookings(
    tx,
    booking.storehouseId,
    eq(bookings.equipmentUnitId, booking.equipmentUnitId),
    ne(bookings.bookingId, booking.bookingId),
    inArray(bookings.state, ['offered', 'booked']),
    sql`${bookings.startsAt} >= ${booking.startsAt.toISOString()}::timestamptz`,
  )
    .orderBy(asc(bookings.startsAt))
    .limit(1);
  return row;
}

/** Offers that nobody took while they stood. */
export async function listLapsedOffers(tx: Tx, storehouseId: string, now: Date): Promise<BookingRow[]> {
  return selectBookings(
    tx,
    storehouseId,
    eq(bookings.state, 'offered'),
    sql`${bookings.offeredUntil} <= ${now.toISOString()}::timestamptz`,
  );
}

export async function insertWish(
  tx: Tx,
  row: typeof equipmentWishes.$inferInsert,
): Promise<EquipmentWishRow> {
  const [inserted] = await tx.insert(equipmentWishes).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

export async function loadWish(tx: Tx, storehouseId: string, wishId: string): Promise<EquipmentWishRow> {
  const [row] = await tx
    .select()
    .from(equipmentWishes)
    .where(and(eq(equipmentWishes.storehouseId, storehouseId), eq(equipmentWishes.equipmentWishId, wishId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'waiting' });
  return row;
}

export async function updateWish(
  tx: Tx,
  wish: EquipmentWishRow,
  change: { endedAt: Date; bookingId?: string },
): Promise<void> {
  await tx
    .update(equipmentWishes)
    .set(change)
    .where(
      and(
        eq(equipmentWishes.storehouseId, wish.storehouseId),
        eq(equipmentWishes.equipmentWishId, wish.equipmentWishId),
      ),
    );
}

/** Loans that were to begin by an instant and that nobody fetched, the earliest first. */
export async function listUnfetched(tx: Tx, storehouseId: string, startedBy: Date): Promise<BookingRow[]> {
  return selectBookings(
    tx,
    storehouseId,
    eq(bookings.purpose, 'loan'),
    eq(bookings.state, 'booked'),
    lte(bookings.startsAt, startedBy),
  ).orderBy(asc(bookings.startsAt), asc(bookings.bookingId));
}

/** Who waits for things, the earliest wish first, those of one moment by seat. */
export async function listWaiting(
  tx: Tx,
  storehouseId: string,
  of: { itemId?: string; householdId?: string } = {},
) {
  return tx
    .select({
      wish: equipmentWishes,
      itemName: equipmentItems.name,
      seat: households.seat,
      householdName: households.name,
    })
    .from(equipmentWishes)
    .innerJoin(households, joinOn(households, equipmentWishes, 'householdId'))
    .innerJoin(equipmentItems, joinOn(equipmentItems, equipmentWishes, 'equipmentItemId'))
    .where(
      and(
        eq(equipmentWishes.storehouseId, storehouseId),
        isNull(equipmentWishes.endedAt),
        of.itemId === undefined ? undefined : eq(equipmentWishes.equipmentItemId, of.itemId),
        of.householdId === undefined ? undefined : eq(equipmentWishes.householdId, of.householdId),
      ),
    )
    .orderBy(asc(equipmentWishes.askedAt), asc(households.seat));
}
export type ListedWish = Awaited<ReturnType<typeof listWaiting>>[number];
