import { sql } from 'drizzle-orm';
import { bigint, boolean, date, integer, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const equipmentItems = book.table(
  'equipment_item',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    equipmentItemId: uuid('equipment_item_id').notNull().default(sql`uuidv7()`),
    ownerId: uuid('owner_id').notNull(),
    name: text('name').notNull(),
    kindNote: text('kind_note').notNull().default(''),
    partsList: text('parts_list').notNull().default(''),
    valueMinorUnits: bigint('value_minor_units', { mode: 'number' }),
    keptWhere: text('kept_where').notNull().default(''),
    enteredBy: uuid('entered_by').notNull(),
    enteredAt: timestamp('entered_at', { withTimezone: true, mode: 'date' }).notNull(),
    version: integer('version').notNull().default(1),
    cautions: text('cautions').notNull().default(''),
    depositMinorUnits: bigint('deposit_minor_units', { mode: 'number' }).notNull().default(0),
    feeMinorUnits: bigint('fee_minor_units', { mode: 'number' }).notNull().default(0),
    lateFeeMinorUnits: bigint('late_fee_minor_units', { mode: 'number' }).notNull().default(0),
    damageNote: text('damage_note').notNull().default(''),
    preMinutes: integer('pre_minutes').notNull().default(0),
    postMinutes: integer('post_minutes').notNull().default(0),
    longestDays: integer('longest_days').notNull().default(3),
    mayRelay: boolean('may_relay').notNull().default(false),
    serviceEveryUses: integer('service_every_uses'),
    serviceEveryDays: integer('service_every_days'),
    touchesFood: boolean('touches_food').notNull().default(false),
    isScale: boolean('is_scale').notNull().default(false),
    isThermometer: boolean('is_thermometer').notNull().default(false),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.equipmentItemId] })],
);
export type EquipmentItemRow = typeof equipmentItems.$inferSelect;

export const equipmentUnits = book.table(
  'equipment_unit',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    equipmentUnitId: uuid('equipment_unit_id').notNull().default(sql`uuidv7()`),
    equipmentItemId: uuid('equipment_item_id').notNull(),
    unitNo: integer('unit_no').notNull(),
    unitCode: text('unit_code').notNull(),
    condition: text('condition').notNull().default('ready'),
    conditionNote: text('condition_note').notNull().default(''),
    inUseSince: date('in_use_since', { mode: 'string' }).notNull(),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.equipmentUnitId] })],
);
export type EquipmentUnitRow = typeof equipmentUnits.$inferSelect;

export const equipmentParts = book.table(
  'equipment_part',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    equipmentPartId: uuid('equipment_part_id').notNull().default(sql`uuidv7()`),
    equipmentItemId: uuid('equipment_item_id').notNull(),
    position: integer('position').notNull(),
    name: text('name').notNull(),
    pieces: integer('pieces').notNull(),
    isCritical: boolean('is_critical').notNull(),
    valueMinorUnits: bigint('value_minor_units', { mode: 'number' }).notNull(),
    droppedAt: timestamp('dropped_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.equipmentPartId] })],
);
export type EquipmentPartRow = typeof equipmentParts.$inferSelect;

export const missingParts = book.table(
  'missing_part',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    equipmentUnitId: uuid('equipment_unit_id').notNull(),
    equipmentPartId: uuid('equipment_part_id').notNull(),
    pieces: integer('pieces').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.equipmentUnitId, table.equipmentPartId] })],
);
export type MissingPartRow = typeof missingParts.$inferSelect;

export const maintenances = book.table(
  'maintenance',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    maintenanceId: uuid('maintenance_id').notNull().default(sql`uuidv7()`),
    equipmentUnitId: uuid('equipment_unit_id').notNull(),
    doneOn: date('done_on', { mode: 'string' }).notNull(),
    what: text('what').notNull(),
    isService: boolean('is_service').notNull(),
    recordedBy: uuid('recorded_by').notNull(),
    recordedAt: timestamp('recorded_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.maintenanceId] })],
);
export type MaintenanceRow = typeof maintenances.$inferSelect;

export const scaleChecks = book.table(
  'scale_check',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    scaleCheckId: uuid('scale_check_id').notNull().default(sql`uuidv7()`),
    equipmentItemId: uuid('equipment_item_id').notNull(),
    equipmentUnitId: uuid('equipment_unit_id').notNull(),
    isScale: boolean('is_scale').notNull().default(true),
    laidGrams: bigint('laid_grams', { mode: 'number' }),
    shownGrams: bigint('shown_grams', { mode: 'number' }),
    limitGrams: bigint('limit_grams', { mode: 'number' }),
    checkedOn: date('checked_on', { mode: 'string' }).notNull(),
    checkedBy: uuid('checked_by').notNull(),
    recordedAt: timestamp('recorded_at', { withTimezone: true, mode: 'date' }).notNull(),
    isThermometer: boolean('is_thermometer').notNull().default(false),
    knownTenths: integer('known_tenths'),
    shownTenths: integer('shown_tenths'),
    limitTenths: integer('limit_tenths'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.scaleCheckId] })],
);
export type ScaleCheckRow = typeof scaleChecks.$inferSelect;
