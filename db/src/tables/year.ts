import { sql } from 'drizzle-orm';
import { bigint, date, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const periodSignatures = book.table(
  'period_signature',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    closedThrough: date('closed_through', { mode: 'string' }).notNull(),
    duty: text('duty').notNull(),
    personId: uuid('person_id').notNull(),
    signedAt: timestamp('signed_at', { withTimezone: true, mode: 'date' }).notNull(),
    digestSha256: text('digest_sha256').notNull(),
    remarks: text('remarks').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.closedThrough, table.duty] })],
);
export type PeriodSignatureRow = typeof periodSignatures.$inferSelect;

export const stockCounts = book.table(
  'stock_count',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    stockCountId: uuid('stock_count_id').notNull().default(sql`uuidv7()`),
    accountId: uuid('account_id').notNull(),
    bookGrams: bigint('book_grams', { mode: 'number' }).notNull(),
    countedGrams: bigint('counted_grams', { mode: 'number' }).notNull(),
    note: text('note').notNull().default(''),
    countedBy: uuid('counted_by').notNull(),
    countedAt: timestamp('counted_at', { withTimezone: true, mode: 'date' }).notNull(),
    entryId: uuid('entry_id'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.stockCountId] })],
);
export type StockCountRow = typeof stockCounts.$inferSelect;
