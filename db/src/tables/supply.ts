import { bigint, boolean, date, integer, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const supplies = book.table(
  'supply',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    supplyId: uuid('supply_id').notNull(),
    unitKind: text('unit_kind').notNull().default('supply'),
    name: text('name').notNull(),
    kind: text('kind').notNull(),
    containerKindId: uuid('container_kind_id'),
    sizeMillilitres: integer('size_millilitres'),
    piecesEach: integer('pieces_each').notNull().default(1),
    packPieces: integer('pack_pieces').notNull(),
    packMinorUnits: bigint('pack_minor_units', { mode: 'number' }),
    isRetired: boolean('is_retired').notNull().default(false),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.supplyId] })],
);
export type SupplyRow = typeof supplies.$inferSelect;

export const supplyUseBys = book.table(
  'supply_use_by',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    entryId: uuid('entry_id').notNull(),
    supplyId: uuid('supply_id').notNull(),
    useBy: date('use_by', { mode: 'string' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.entryId, table.supplyId] })],
);
export type SupplyUseByRow = typeof supplyUseBys.$inferSelect;
