import { sql } from 'drizzle-orm';
import { bigint, date, integer, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const containerWishes = book.table(
  'container_wish',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    containerWishId: uuid('container_wish_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    buyLineId: uuid('buy_line_id').notNull(),
    householdId: uuid('household_id').notNull(),
    position: integer('position').notNull(),
    containerKindId: uuid('container_kind_id').notNull(),
    grams: bigint('grams', { mode: 'number' }),
    enteredBy: uuid('entered_by').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.containerWishId] })],
);
export type ContainerWishRow = typeof containerWishes.$inferSelect;

export const containers = book.table(
  'container',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    containerId: uuid('container_id').notNull(),
    vesselKind: text('vessel_kind').notNull().default('container'),
    containerCode: text('container_code').notNull(),
    containerKindId: uuid('container_kind_id').notNull(),
    lotId: uuid('lot_id').notNull(),
    householdId: uuid('household_id'),
    packedOn: date('packed_on', { mode: 'string' }).notNull(),
    openedOn: date('opened_on', { mode: 'string' }),
    note: text('note').notNull().default(''),
    treatment: text('treatment'),
    moistureTenths: integer('moisture_tenths'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.containerId] })],
);
export type ContainerRow = typeof containers.$inferSelect;

export const codeCounters = book.table(
  'code_counter',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    counter: text('counter').notNull(),
    lastNumber: bigint('last_number', { mode: 'number' }).notNull().default(0),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.counter] })],
);
export type CodeCounterRow = typeof codeCounters.$inferSelect;
