import { sql } from 'drizzle-orm';
import { boolean, integer, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';
import { day, instant } from './columns.ts';

export const inspections = book.table(
  'inspection',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    inspectionId: uuid('inspection_id').notNull().default(sql`uuidv7()`),
    containerId: uuid('container_id').notNull(),
    householdId: uuid('household_id'),
    how: text('how').notNull(),
    findings: text('findings').array().notNull(),
    best: text('best').notNull(),
    outcome: text('outcome').notNull(),
    damagedKernels: integer('damaged_kernels'),
    sampleGrams: integer('sample_grams'),
    note: text('note').notNull().default(''),
    entryId: uuid('entry_id'),
    inspectedBy: uuid('inspected_by').notNull(),
    inspectedAt: instant('inspected_at').notNull(),
    inspectedOn: day('inspected_on').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.inspectionId] })],
);
export type InspectionRow = typeof inspections.$inferSelect;

export const watches = book.table(
  'watch',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    containerId: uuid('container_id').notNull(),
    inspectionId: uuid('inspection_id').notNull(),
    householdId: uuid('household_id'),
    finding: text('finding').notNull(),
    isSameWindow: boolean('is_same_window').notNull(),
    since: instant('since').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.containerId, table.inspectionId] })],
);
export type WatchRow = typeof watches.$inferSelect;

export const lidChecks = book.table(
  'lid_check',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    lidCheckId: uuid('lid_check_id').notNull().default(sql`uuidv7()`),
    containerId: uuid('container_id').notNull(),
    householdId: uuid('household_id'),
    closedAt: instant('closed_at').notNull(),
    says: text('says').notNull(),
    note: text('note').notNull().default(''),
    checkedBy: uuid('checked_by').notNull(),
    checkedAt: instant('checked_at').notNull(),
    recordedAt: instant('recorded_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.lidCheckId] })],
);
