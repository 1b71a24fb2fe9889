import { sql } from 'drizzle-orm';
import { bigint, boolean, date, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const papers = book.table(
  'paper',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    paperId: uuid('paper_id').notNull().default(sql`uuidv7()`),
    paperNo: bigint('paper_no', { mode: 'number' }).notNull(),
    paperCode: text('paper_code').notNull(),
    kind: text('kind').notNull(),
    buyId: uuid('buy_id'),
    householdId: uuid('household_id'),
    subjectId: uuid('subject_id'),
    detail: text('detail').notNull().default(''),
    asOfEntryNo: bigint('as_of_entry_no', { mode: 'number' }).notNull(),
    printedOn: date('printed_on', { mode: 'string' }).notNull(),
    printedBy: uuid('printed_by').notNull(),
    printedAt: timestamp('printed_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.paperId] })],
);
export type PaperRow = typeof papers.$inferSelect;

export const keyings = book.table(
  'keying',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    keyingId: uuid('keying_id').notNull().default(sql`uuidv7()`),
    what: text('what').notNull(),
    subjectId: uuid('subject_id').notNull(),
    buyId: uuid('buy_id').notNull(),
    householdId: uuid('household_id'),
    paperId: uuid('paper_id'),
    writtenAt: timestamp('written_at', { withTimezone: true, mode: 'date' }).notNull(),
    keyedAt: timestamp('keyed_at', { withTimezone: true, mode: 'date' }).notNull(),
    keyedBy: uuid('keyed_by').notNull(),
    isEnteredFor: boolean('is_entered_for').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.keyingId] })],
);
export type KeyingRow = typeof keyings.$inferSelect;
