import { sql } from 'drizzle-orm';
import { boolean, date, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const notices = book.table(
  'notice',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    noticeId: uuid('notice_id').notNull().default(sql`uuidv7()`),
    kind: text('kind').notNull(),
    audience: text('audience').notNull(),
    duty: text('duty'),
    householdId: uuid('household_id'),
    buyId: uuid('buy_id'),
    about: text('about').notNull(),
    /** Empty where it is the same in both languages. */
    aboutEs: text('about_es').notNull().default(''),
    says: text('says').notNull(),
    saysEs: text('says_es').notNull(),
    dueOn: date('due_on', { mode: 'string' }),
    path: text('path').notNull().default(''),
    isSafety: boolean('is_safety').notNull(),
    writtenBy: uuid('written_by'),
    writtenAt: timestamp('written_at', { withTimezone: true, mode: 'date' }).notNull(),
    withdrawnAt: timestamp('withdrawn_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.noticeId] })],
);
export type NoticeRow = typeof notices.$inferSelect;

export const noticeReadings = book.table(
  'notice_reading',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    noticeReadingId: uuid('notice_reading_id').notNull().default(sql`uuidv7()`),
    noticeId: uuid('notice_id').notNull(),
    personId: uuid('person_id').notNull(),
    householdId: uuid('household_id'),
    readAt: timestamp('read_at', { withTimezone: true, mode: 'date' }).notNull(),
    acknowledgedAt: timestamp('acknowledged_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.noticeReadingId] })],
);
export type NoticeReadingRow = typeof noticeReadings.$inferSelect;
