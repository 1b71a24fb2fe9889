import { boolean, date, integer, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const imports = book.table(
  'import',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    importId: uuid('import_id').notNull(),
    importNo: integer('import_no').notNull(),
    openingOn: date('opening_on', { mode: 'string' }).notNull(),
    importedBy: uuid('imported_by').notNull(),
    importedAt: timestamp('imported_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.importId] })],
);
export type ImportRow = typeof imports.$inferSelect;

export const importFiles = book.table(
  'import_file',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    importId: uuid('import_id').notNull(),
    position: integer('position').notNull(),
    kind: text('kind').notNull(),
    fileName: text('file_name').notNull(),
    sha256: text('sha256').notNull(),
    newRows: integer('new_rows').notNull(),
    skippedRows: integer('skipped_rows').notNull(),
    takenBack: boolean('taken_back').notNull().default(false),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.importId, table.position] })],
);
export type ImportFileRow = typeof importFiles.$inferSelect;

export const importThings = book.table(
  'import_thing',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    importId: uuid('import_id').notNull(),
    kind: text('kind').notNull(),
    thingId: uuid('thing_id').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.importId, table.thingId] })],
);
export type ImportThingRow = typeof importThings.$inferSelect;

export const importUndoings = book.table(
  'import_undoing',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    importId: uuid('import_id').notNull(),
    undoneBy: uuid('undone_by').notNull(),
    undoneAt: timestamp('undone_at', { withTimezone: true, mode: 'date' }).notNull(),
    reason: text('reason').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.importId] })],
);
export type ImportUndoingRow = typeof importUndoings.$inferSelect;
