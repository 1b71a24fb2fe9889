import { boolean, integer, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const tellingWishes = book.table(
  'telling_wish',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    personId: uuid('person_id').notNull(),
    language: text('language').notNull(),
    timeZone: text('time_zone').notNull(),
    fromHour: integer('from_hour').notNull(),
    toHour: integer('to_hour').notNull(),
    digestHour: integer('digest_hour'),
    isEmailOn: boolean('is_email_on').notNull(),
    stoppedKinds: text('stopped_kinds').array().notNull(),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.personId] })],
);
export type TellingWishRow = typeof tellingWishes.$inferSelect;

export const tellings = book.table(
  'telling',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    personId: uuid('person_id').notNull(),
    channel: text('channel').notNull(),
    tellingKey: text('telling_key').notNull(),
    toldAt: timestamp('told_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.personId, table.channel, table.tellingKey] })],
);
export type TellingRow = typeof tellings.$inferSelect;

export const stopLinks = book.table(
  'stop_link',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    tokenHash: text('token_hash').notNull(),
    personId: uuid('person_id').notNull(),
    kind: text('kind').notNull(),
    madeAt: timestamp('made_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.tokenHash] })],
);
export type StopLinkRow = typeof stopLinks.$inferSelect;
