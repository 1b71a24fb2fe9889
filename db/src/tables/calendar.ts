import { sql } from 'drizzle-orm';
import { integer, jsonb, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const calendarFeeds = book.table(
  'calendar_feed',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    calendarFeedId: uuid('calendar_feed_id').notNull().default(sql`uuidv7()`),
    personId: uuid('person_id').notNull(),
    scope: text('scope').notNull(),
    itemKind: text('item_kind'),
    itemId: uuid('item_id'),
    language: text('language').notNull(),
    secretSha256: text('secret_sha256').notNull(),
    madeAt: timestamp('made_at', { withTimezone: true, mode: 'date' }).notNull(),
    renewedAt: timestamp('renewed_at', { withTimezone: true, mode: 'date' }),
    endedAt: timestamp('ended_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.calendarFeedId] })],
);
export type CalendarFeedRow = typeof calendarFeeds.$inferSelect;

export const calendarEvents = book.table(
  'calendar_event',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    eventKey: text('event_key').notNull(),
    householdId: uuid('household_id'),
    content: jsonb('content').notNull(),
    sequence: integer('sequence').notNull().default(0),
    modifiedAt: timestamp('modified_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.eventKey] })],
);
export type CalendarEventRow = typeof calendarEvents.$inferSelect;
