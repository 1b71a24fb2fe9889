import { sql } from 'drizzle-orm';
import { bigint, boolean, integer, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const bookings = book.table(
  'booking',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    bookingId: uuid('booking_id').notNull().default(sql`uuidv7()`),
    equipmentItemId: uuid('equipment_item_id').notNull(),
    equipmentUnitId: uuid('equipment_unit_id').notNull(),
    purpose: text('purpose').notNull(),
    householdId: uuid('household_id'),
    sessionId: uuid('session_id'),
    startsAt: timestamp('starts_at', { withTimezone: true, mode: 'date' }).notNull(),
    endsAt: timestamp('ends_at', { withTimezone: true, mode: 'date' }).notNull(),
    blockedFrom: timestamp('blocked_from', { withTimezone: true, mode: 'date' }).notNull(),
    blockedTo: timestamp('blocked_to', { withTimezone: true, mode: 'date' }).notNull(),
    state: text('state').notNull().default('booked'),
    offeredUntil: timestamp('offered_until', { withTimezone: true, mode: 'date' }),
    relayFromId: uuid('relay_from_id'),
    relayAgreedAt: timestamp('relay_agreed_at', { withTimezone: true, mode: 'date' }),
    uses: integer('uses'),
    note: text('note').notNull().default(''),
    bookedBy: uuid('booked_by').notNull(),
    bookedAt: timestamp('booked_at', { withTimezone: true, mode: 'date' }).notNull(),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.bookingId] })],
);
export type BookingRow = typeof bookings.$inferSelect;

export const bookingFoods = book.table(
  'booking_food',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    bookingId: uuid('booking_id').notNull(),
    foodId: uuid('food_id').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.bookingId, table.foodId] })],
);

export const loans = book.table(
  'loan',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    loanId: uuid('loan_id').notNull().default(sql`uuidv7()`),
    bookingId: uuid('booking_id').notNull(),
    equipmentUnitId: uuid('equipment_unit_id').notNull(),
    householdId: uuid('household_id').notNull(),
    outAt: timestamp('out_at', { withTimezone: true, mode: 'date' }).notNull(),
    dueAt: timestamp('due_at', { withTimezone: true, mode: 'date' }).notNull(),
    inAt: timestamp('in_at', { withTimezone: true, mode: 'date' }),
    handedOutBy: uuid('handed_out_by').notNull(),
    takenBy: text('taken_by').notNull(),
    takenBackBy: uuid('taken_back_by'),
    broughtBy: text('brought_by'),
    conditionIn: text('condition_in'),
    noteOut: text('note_out').notNull().default(''),
    noteIn: text('note_in').notNull().default(''),
    depositMinorUnits: bigint('deposit_minor_units', { mode: 'number' }).notNull(),
    depositFrom: text('deposit_from').notNull(),
    refundTo: text('refund_to'),
    refundMinorUnits: bigint('refund_minor_units', { mode: 'number' }),
    keptMinorUnits: bigint('kept_minor_units', { mode: 'number' }),
    feeMinorUnits: bigint('fee_minor_units', { mode: 'number' }),
    lateMinorUnits: bigint('late_minor_units', { mode: 'number' }),
    isLateWaived: boolean('is_late_waived').notNull().default(false),
    partsMinorUnits: bigint('parts_minor_units', { mode: 'number' }),
    damageMinorUnits: bigint('damage_minor_units', { mode: 'number' }),
    relayedFromId: uuid('relayed_from_id'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.loanId] })],
);
export type LoanRow = typeof loans.$inferSelect;

export const loanParts = book.table(
  'loan_part',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    loanId: uuid('loan_id').notNull(),
    equipmentPartId: uuid('equipment_part_id').notNull(),
    name: text('name').notNull(),
    isCritical: boolean('is_critical').notNull(),
    valueMinorUnits: bigint('value_minor_units', { mode: 'number' }).notNull(),
    outPieces: integer('out_pieces').notNull(),
    inPieces: integer('in_pieces'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.loanId, table.equipmentPartId] })],
);
export type LoanPartRow = typeof loanParts.$inferSelect;

export const equipmentWishes = book.table(
  'equipment_wish',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    equipmentWishId: uuid('equipment_wish_id').notNull().default(sql`uuidv7()`),
    equipmentItemId: uuid('equipment_item_id').notNull(),
    householdId: uuid('household_id').notNull(),
    startsAt: timestamp('starts_at', { withTimezone: true, mode: 'date' }).notNull(),
    endsAt: timestamp('ends_at', { withTimezone: true, mode: 'date' }).notNull(),
    askedBy: uuid('asked_by').notNull(),
    askedAt: timestamp('asked_at', { withTimezone: true, mode: 'date' }).notNull(),
    endedAt: timestamp('ended_at', { withTimezone: true, mode: 'date' }),
    bookingId: uuid('booking_id'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.equipmentWishId] })],
);
export type EquipmentWishRow = typeof equipmentWishes.$inferSelect;

export const equipmentWishFoods = book.table(
  'equipment_wish_food',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    equipmentWishId: uuid('equipment_wish_id').notNull(),
    foodId: uuid('food_id').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.equipmentWishId, table.foodId] })],
);
