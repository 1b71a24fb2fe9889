import { sql } from 'drizzle-orm';
import { integer, jsonb, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const works = book.table(
  'work',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    workId: uuid('work_id').notNull().default(sql`uuidv7()`),
    task: text('task').notNull(),
    payload: jsonb('payload').notNull(),
    jobKey: text('job_key'),
    personId: uuid('person_id'),
    state: text('state').notNull().default('waiting'),
    version: integer('version').notNull().default(1),
    tries: integer('tries').notNull().default(0),
    lastReason: text('last_reason'),
    madeAt: timestamp('made_at', { withTimezone: true, mode: 'date' }).notNull().defaultNow(),
    dueAt: timestamp('due_at', { withTimezone: true, mode: 'date' }),
    endedAt: timestamp('ended_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.workId] })],
);
export type WorkRow = typeof works.$inferSelect;

export const letters = book.table(
  'letter',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    letterId: uuid('letter_id').notNull(),
    personId: uuid('person_id').notNull(),
    kind: text('kind').notNull(),
    subject: text('subject').notNull(),
    bodyText: text('body_text').notNull(),
    bodyHtml: text('body_html').notNull(),
    stopUrl: text('stop_url'),
    state: text('state').notNull().default('waiting'),
    unsentBecause: text('unsent_because'),
    sendingAt: timestamp('sending_at', { withTimezone: true, mode: 'date' }),
    endedAt: timestamp('ended_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.letterId] })],
);
export type LetterRow = typeof letters.$inferSelect;
