import { sql } from 'drizzle-orm';
import { bigint, boolean, integer, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';
import { day, instant } from './columns.ts';

export const places = book.table(
  'place',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    placeId: uuid('place_id').notNull().default(sql`uuidv7()`),
    householdId: uuid('household_id'),
    name: text('name').notNull(),
    kind: text('kind').notNull(),
    isLit: boolean('is_lit'),
    isDamp: boolean('is_damp'),
    isRodentProof: boolean('is_rodent_proof'),
    version: integer('version').notNull().default(1),
    mostGrams: bigint('most_grams', { mode: 'number' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.placeId] })],
);
export type PlaceRow = typeof places.$inferSelect;

export const placeLogs = book.table(
  'place_log',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    placeLogId: uuid('place_log_id').notNull().default(sql`uuidv7()`),
    placeId: uuid('place_id').notNull(),
    fileName: text('file_name').notNull(),
    fileHash: text('file_hash').notNull(),
    firstOn: day('first_on').notNull(),
    lastOn: day('last_on').notNull(),
    readings: integer('readings').notNull(),
    badLines: integer('bad_lines').notNull(),
    takenBy: uuid('taken_by').notNull(),
    takenAt: instant('taken_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.placeLogId] })],
);
export type PlaceLogRow = typeof placeLogs.$inferSelect;

export const placeWarmths = book.table(
  'place_warmth',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    placeId: uuid('place_id').notNull(),
    fromOn: day('from_on').notNull(),
    toOn: day('to_on').notNull(),
    ageTenths: integer('age_tenths').notNull(),
    meanTenths: integer('mean_tenths').notNull(),
    coldestTenths: integer('coldest_tenths').notNull(),
    warmestTenths: integer('warmest_tenths').notNull(),
    readings: integer('readings').notNull(),
    placeLogId: uuid('place_log_id'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.placeId, table.fromOn] })],
);
export type PlaceWarmthRow = typeof placeWarmths.$inferSelect;

export const containerMoves = book.table(
  'container_move',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    containerMoveId: uuid('container_move_id').notNull().default(sql`uuidv7()`),
    containerId: uuid('container_id').notNull(),
    movedOn: day('moved_on').notNull(),
    placeId: uuid('place_id'),
    toldTenths: integer('told_tenths'),
    movedBy: uuid('moved_by').notNull(),
    movedAt: instant('moved_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.containerMoveId] })],
);
export type ContainerMoveRow = typeof containerMoves.$inferSelect;
