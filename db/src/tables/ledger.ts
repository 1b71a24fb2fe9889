import { sql } from 'drizzle-orm';
import {
  bigint,
  boolean,
  char,
  date,
  primaryKey,
  smallint,
  text,
  timestamp,
  uuid,
} from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const bookStates = book.table(
  'book_state',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    lastEntryNo: bigint('last_entry_no', { mode: 'number' }).notNull().default(0),
    closedThrough: date('closed_through', { mode: 'string' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId] })],
);
export type BookStateRow = typeof bookStates.$inferSelect;

export const units = book.table(
  'unit',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    unitId: uuid('unit_id').notNull().default(sql`uuidv7()`),
    kind: text('kind').notNull(),
    currency: char('currency', { length: 3 }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.unitId] })],
);
export type UnitRow = typeof units.$inferSelect;

export const vessels = book.table(
  'vessel',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    vesselId: uuid('vessel_id').notNull().default(sql`uuidv7()`),
    kind: text('kind').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.vesselId] })],
);
export type VesselRow = typeof vessels.$inferSelect;

export const accounts = book.table(
  'account',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    accountId: uuid('account_id').notNull().default(sql`uuidv7()`),
    unitId: uuid('unit_id').notNull(),
    unitKind: text('unit_kind').notNull(),
    kind: text('kind').notNull(),
    vesselId: uuid('vessel_id'),
    vesselKind: text('vessel_kind'),
    ownerId: uuid('owner_id'),
    causeId: uuid('cause_id'),
    guard: text('guard').notNull(),
    closed: boolean('closed').notNull().default(false),
    inflow: bigint('inflow', { mode: 'number' }).notNull().default(0),
    outflow: bigint('outflow', { mode: 'number' }).notNull().default(0),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.accountId] })],
);
export type AccountRow = typeof accounts.$inferSelect;

export const entries = book.table(
  'entry',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    entryId: uuid('entry_id').notNull().default(sql`uuidv7()`),
    entryNo: bigint('entry_no', { mode: 'number' }).notNull(),
    what: text('what').notNull(),
    onDay: date('on_day', { mode: 'string' }).notNull(),
    recordedAt: timestamp('recorded_at', { withTimezone: true, mode: 'date' }).notNull(),
    personId: uuid('person_id').notNull(),
    enteredFor: uuid('entered_for'),
    buyId: uuid('buy_id'),
    subjectId: uuid('subject_id'),
    reversesId: uuid('reverses_id'),
    note: text('note').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.entryId] })],
);
export type EntryRow = typeof entries.$inferSelect;

export const movements = book.table(
  'movement',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    entryId: uuid('entry_id').notNull(),
    line: smallint('line').notNull(),
    unitId: uuid('unit_id').notNull(),
    sourceId: uuid('source_id').notNull(),
    destinationId: uuid('destination_id').notNull(),
    amount: bigint('amount', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.entryId, table.line] })],
);
export type MovementRow = typeof movements.$inferSelect;
