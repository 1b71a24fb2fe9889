import { sql } from 'drizzle-orm';
import { bigint, integer, jsonb, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';
import { day, instant } from './columns.ts';

export const bankFiles = book.table(
  'bank_file',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    bankFileId: uuid('bank_file_id').notNull(),
    name: text('name').notNull(),
    headings: text('headings').notNull(),
    columns: jsonb('columns').notNull(),
    takenBy: uuid('taken_by').notNull(),
    takenAt: instant('taken_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.bankFileId] })],
);
export type BankFileRow = typeof bankFiles.$inferSelect;

export const bankLines = book.table(
  'bank_line',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    bankLineId: uuid('bank_line_id').notNull().default(sql`uuidv7()`),
    bankFileId: uuid('bank_file_id').notNull(),
    rowNo: integer('row_no').notNull(),
    onDay: day('on_day').notNull(),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
    words: text('words').notNull(),
    fingerprint: text('fingerprint').notNull(),
    occurrence: integer('occurrence').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.bankLineId] })],
);
export type BankLineRow = typeof bankLines.$inferSelect;

export const bankMatches = book.table(
  'bank_match',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    bankMatchId: uuid('bank_match_id').notNull().default(sql`uuidv7()`),
    bankLineId: uuid('bank_line_id').notNull(),
    how: text('how').notNull(),
    entryId: uuid('entry_id'),
    reason: text('reason').notNull().default(''),
    matchedBy: uuid('matched_by').notNull(),
    matchedAt: instant('matched_at').notNull(),
    undoneBy: uuid('undone_by'),
    undoneAt: instant('undone_at'),
    undoneBecause: text('undone_because'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.bankMatchId] })],
);
export type BankMatchRow = typeof bankMatches.$inferSelect;

export const bankBalances = book.table(
  'bank_balance',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    bankBalanceId: uuid('bank_balance_id').notNull().default(sql`uuidv7()`),
    onDay: day('on_day').notNull(),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
    bankFileId: uuid('bank_file_id'),
    saidBy: uuid('said_by').notNull(),
    saidAt: instant('said_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.bankBalanceId] })],
);
export type BankBalanceRow = typeof bankBalances.$inferSelect;

export const cashCounts = book.table(
  'cash_count',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    cashCountId: uuid('cash_count_id').notNull(),
    onDay: day('on_day').notNull(),
    expectedMinorUnits: bigint('expected_minor_units', { mode: 'number' }).notNull(),
    countedMinorUnits: bigint('counted_minor_units', { mode: 'number' }).notNull(),
    pieces: jsonb('pieces'),
    reason: text('reason').notNull().default(''),
    entryId: uuid('entry_id'),
    countedBy: uuid('counted_by').notNull(),
    countedWith: uuid('counted_with'),
    countedAt: instant('counted_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.cashCountId] })],
);
export type CashCountRow = typeof cashCounts.$inferSelect;
