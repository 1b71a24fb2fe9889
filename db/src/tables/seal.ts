import { sql } from 'drizzle-orm';
import { bigint, boolean, integer, jsonb, primaryKey, smallint, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';
import { instant } from './columns.ts';

export const sealMachines = book.table(
  'seal_machine',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    sealMachineId: uuid('seal_machine_id').notNull().default(sql`uuidv7()`),
    name: text('name').notNull(),
    kind: text('kind').notNull(),
    outSince: instant('out_since'),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.sealMachineId] })],
);
export type SealMachineRow = typeof sealMachines.$inferSelect;

export const seamLimits = book.table(
  'seam_limit',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    containerKindId: uuid('container_kind_id').notNull(),
    widthLeast: integer('width_least').notNull(),
    widthMost: integer('width_most').notNull(),
    thicknessLeast: integer('thickness_least').notNull(),
    thicknessMost: integer('thickness_most').notNull(),
    countersinkLeast: integer('countersink_least').notNull(),
    countersinkMost: integer('countersink_most').notNull(),
    overlapPercent: integer('overlap_percent').notNull(),
    lidPlate: integer('lid_plate').notNull(),
    bodyPlate: integer('body_plate').notNull(),
    source: text('source').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.containerKindId] })],
);
export type SeamLimitRow = typeof seamLimits.$inferSelect;

export const sealChecks = book.table(
  'seal_check',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    sealCheckId: uuid('seal_check_id').notNull().default(sql`uuidv7()`),
    sealMachineId: uuid('seal_machine_id').notNull(),
    packingSessionId: uuid('packing_session_id').notNull(),
    line: smallint('line').notNull(),
    serial: integer('serial'),
    containerKindId: uuid('container_kind_id').notNull(),
    how: text('how').notNull(),
    looksGood: boolean('looks_good').notNull(),
    measures: jsonb('measures'),
    faults: jsonb('faults').notNull(),
    passed: boolean('passed').notNull(),
    note: text('note').notNull().default(''),
    suspectFrom: integer('suspect_from'),
    suspectTo: integer('suspect_to'),
    checkedBy: uuid('checked_by').notNull(),
    checkedAt: instant('checked_at').notNull(),
    occasion: text('occasion').notNull().default('due'),
    gauge: text('gauge').notNull().default(''),
    closedThrough: integer('closed_through').notNull().default(0),
    recordedAt: instant('recorded_at').notNull(),
    goodUntil: instant('good_until').notNull(),
    goodSerial: integer('good_serial').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.sealCheckId] })],
);
export type SealCheckRow = typeof sealChecks.$inferSelect;

export const sealHolds = book.table(
  'seal_hold',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    containerId: uuid('container_id').notNull(),
    sealCheckId: uuid('seal_check_id').notNull(),
    disposition: text('disposition'),
    settledBy: uuid('settled_by'),
    settledAt: instant('settled_at'),
    note: text('note').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.containerId, table.sealCheckId] })],
);
export type SealHoldRow = typeof sealHolds.$inferSelect;

export const reCans = book.table(
  're_can',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    reCanId: uuid('re_can_id').notNull().default(sql`uuidv7()`),
    oldContainerId: uuid('old_container_id').notNull(),
    newContainerId: uuid('new_container_id').notNull(),
    householdId: uuid('household_id').notNull(),
    grams: bigint('grams', { mode: 'number' }).notNull(),
    spilledGrams: bigint('spilled_grams', { mode: 'number' }).notNull(),
    note: text('note').notNull().default(''),
    entryId: uuid('entry_id').notNull(),
    doneBy: uuid('done_by').notNull(),
    doneAt: instant('done_at').notNull(),
    undoneEntryId: uuid('undone_entry_id'),
    packingSessionId: uuid('packing_session_id').notNull(),
    line: smallint('line').notNull(),
    serial: integer('serial').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.reCanId] })],
);
export type ReCanRow = typeof reCans.$inferSelect;
