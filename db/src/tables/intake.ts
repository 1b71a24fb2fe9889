import { sql } from 'drizzle-orm';
import { boolean, integer, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';
import { day, instant } from './columns.ts';

export const intakes = book.table(
  'intake',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    lotId: uuid('lot_id').notNull(),
    householdId: uuid('household_id'),
    packedBy: text('packed_by').notNull(),
    packedHow: text('packed_how').notNull(),
    summers: text('summers').notNull(),
    harm: text('harm').notNull(),
    pests: text('pests').notNull(),
    opened: text('opened').notNull(),
    isUnknownHistory: boolean('is_unknown_history').notNull(),
    allergensMet: text('allergens_met').notNull().default(''),
    note: text('note').notNull().default(''),
    takenBy: uuid('taken_by').notNull(),
    takenAt: instant('taken_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.lotId] })],
);
export type IntakeRow = typeof intakes.$inferSelect;

export const intakeDonors = book.table(
  'intake_donor',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    lotId: uuid('lot_id').notNull(),
    householdId: uuid('household_id'),
    donor: text('donor').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.lotId] })],
);

export const donorReadings = book.table(
  'donor_reading',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    donorReadingId: uuid('donor_reading_id').notNull().default(sql`uuidv7()`),
    lotId: uuid('lot_id').notNull(),
    purpose: text('purpose').notNull(),
    readBy: uuid('read_by').notNull(),
    readAt: instant('read_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.donorReadingId] })],
);

export const smallTests = book.table(
  'small_test',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    smallTestId: uuid('small_test_id').notNull().default(sql`uuidv7()`),
    containerId: uuid('container_id').notNull(),
    lotId: uuid('lot_id').notNull(),
    householdId: uuid('household_id'),
    kind: text('kind').notNull(),
    laid: integer('laid'),
    sprouted: integer('sprouted'),
    note: text('note').notNull().default(''),
    testedOn: day('tested_on').notNull(),
    testedBy: uuid('tested_by').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.smallTestId] })],
);
export type SmallTestRow = typeof smallTests.$inferSelect;
