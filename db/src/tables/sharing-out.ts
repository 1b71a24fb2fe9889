import { sql } from 'drizzle-orm';
import {
  bigint,
  boolean,
  integer,
  jsonb,
  numeric,
  primaryKey,
  text,
  timestamp,
  uuid,
} from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const splits = book.table(
  'split',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    splitId: uuid('split_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    buyLineId: uuid('buy_line_id').notNull(),
    roundNo: integer('round_no').notNull(),
    rule: text('rule').notNull(),
    methodVersion: integer('method_version').notNull(),
    answer: jsonb('answer').notNull(),
    madeBy: uuid('made_by').notNull(),
    madeAt: timestamp('made_at', { withTimezone: true, mode: 'date' }).notNull(),
    undoneAt: timestamp('undone_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.splitId] })],
);
export type SplitRow = typeof splits.$inferSelect;

export const splitInputs = book.table(
  'split_inputs',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    splitId: uuid('split_id').notNull(),
    inputs: jsonb('inputs').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.splitId] })],
);
export type SplitInputsRow = typeof splitInputs.$inferSelect;

export const shares = book.table(
  'share',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    splitId: uuid('split_id').notNull(),
    ownerId: uuid('owner_id').notNull(),
    claimGrams: bigint('claim_grams', { mode: 'number' }).notNull(),
    awardGrams: bigint('award_grams', { mode: 'number' }).notNull(),
    exactAward: text('exact_award').notNull(),
    carryChangeGrams: bigint('carry_change_grams', { mode: 'number' }).notNull().default(0),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.splitId, table.ownerId] })],
);
export type ShareRow = typeof shares.$inferSelect;

export const sharePieces = book.table(
  'share_piece',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    splitId: uuid('split_id').notNull(),
    bagId: uuid('bag_id').notNull(),
    ownerId: uuid('owner_id').notNull(),
    grams: bigint('grams', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.splitId, table.bagId, table.ownerId] })],
);
export type SharePieceRow = typeof sharePieces.$inferSelect;

export const chargeLines = book.table(
  'charge_line',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    chargeLineId: uuid('charge_line_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    costLine: text('cost_line').notNull(),
    buyLineId: uuid('buy_line_id'),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
    entryId: uuid('entry_id').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.chargeLineId] })],
);
export type ChargeLineRow = typeof chargeLines.$inferSelect;

export const chargeShares = book.table(
  'charge_share',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    chargeLineId: uuid('charge_line_id').notNull(),
    ownerId: uuid('owner_id').notNull(),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
    weight: numeric('weight', { precision: 40, scale: 0 }).notNull(),
    gotSpareUnit: boolean('got_spare_unit').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.chargeLineId, table.ownerId] })],
);
export type ChargeShareRow = typeof chargeShares.$inferSelect;

export const pickUps = book.table(
  'pick_up',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    pickUpId: uuid('pick_up_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    householdId: uuid('household_id').notNull(),
    startsAt: timestamp('starts_at', { withTimezone: true, mode: 'date' }),
    endsAt: timestamp('ends_at', { withTimezone: true, mode: 'date' }),
    signedBy: text('signed_by').notNull().default(''),
    handedOverBy: uuid('handed_over_by'),
    collectedAt: timestamp('collected_at', { withTimezone: true, mode: 'date' }),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.pickUpId] })],
);
export type PickUpRow = typeof pickUps.$inferSelect;

export const pickUpPieces = book.table(
  'pick_up_piece',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    pickUpId: uuid('pick_up_id').notNull(),
    bagId: uuid('bag_id').notNull(),
    grams: bigint('grams', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.pickUpId, table.bagId] })],
);
export type PickUpPieceRow = typeof pickUpPieces.$inferSelect;
