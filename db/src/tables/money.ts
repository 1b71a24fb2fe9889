import { sql } from 'drizzle-orm';
import { bigint, boolean, date, integer, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const writeOffs = book.table(
  'write_off',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    writeOffId: uuid('write_off_id').notNull().default(sql`uuidv7()`),
    householdId: uuid('household_id').notNull(),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
    needsTwo: boolean('needs_two').notNull(),
    reason: text('reason').notNull(),
    askedBy: uuid('asked_by').notNull(),
    askedAt: timestamp('asked_at', { withTimezone: true, mode: 'date' }).notNull(),
    agreedBy: uuid('agreed_by'),
    agreedAt: timestamp('agreed_at', { withTimezone: true, mode: 'date' }),
    withdrawnAt: timestamp('withdrawn_at', { withTimezone: true, mode: 'date' }),
    entryId: uuid('entry_id'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.writeOffId] })],
);
export type WriteOffRow = typeof writeOffs.$inferSelect;

export const fundPromises = book.table(
  'fund_promise',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    fundPromiseId: uuid('fund_promise_id').notNull().default(sql`uuidv7()`),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
    purpose: text('purpose').notNull(),
    equipmentItemId: uuid('equipment_item_id'),
    overrideReason: text('override_reason').notNull().default(''),
    approvedBy: uuid('approved_by').notNull(),
    approvedAt: timestamp('approved_at', { withTimezone: true, mode: 'date' }).notNull(),
    entryId: uuid('entry_id'),
    withdrawnBy: uuid('withdrawn_by'),
    withdrawnAt: timestamp('withdrawn_at', { withTimezone: true, mode: 'date' }),
    withdrawnBecause: text('withdrawn_because'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.fundPromiseId] })],
);
export type FundPromiseRow = typeof fundPromises.$inferSelect;

/** What a food costs on a shop's shelf, as it was seen. */
export const shelfPrices = book.table(
  'shelf_price',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    shelfPriceId: uuid('shelf_price_id').notNull().default(sql`uuidv7()`),
    foodId: uuid('food_id').notNull(),
    seenOn: date('seen_on', { mode: 'string' }).notNull(),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
    milligrams: bigint('milligrams', { mode: 'number' }).notNull(),
    seenWhere: text('seen_where').notNull().default(''),
    notedBy: uuid('noted_by').notNull(),
    notedAt: timestamp('noted_at', { withTimezone: true, mode: 'date' }).notNull(),
    withdrawnAt: timestamp('withdrawn_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.shelfPriceId] })],
);
export type ShelfPriceRow = typeof shelfPrices.$inferSelect;

export const periodCloses = book.table(
  'period_close',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    closedThrough: date('closed_through', { mode: 'string' }).notNull(),
    closedBy: uuid('closed_by').notNull(),
    closedAt: timestamp('closed_at', { withTimezone: true, mode: 'date' }).notNull(),
    entryCount: integer('entry_count'),
    digestSha256: text('digest_sha256'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.closedThrough] })],
);
export type PeriodCloseRow = typeof periodCloses.$inferSelect;
