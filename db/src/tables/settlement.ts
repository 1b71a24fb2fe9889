import { sql } from 'drizzle-orm';
import { bigint, integer, primaryKey, smallint, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';
import { instant } from './columns.ts';

export const sessionSettlements = book.table(
  'session_settlement',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    sessionSettlementId: uuid('session_settlement_id').notNull().default(sql`uuidv7()`),
    packingSessionId: uuid('packing_session_id').notNull(),
    entryId: uuid('entry_id'),
    note: text('note').notNull().default(''),
    settledBy: uuid('settled_by').notNull(),
    settledAt: instant('settled_at').notNull(),
    undoneAt: instant('undone_at'),
    undoneEntryId: uuid('undone_entry_id'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.sessionSettlementId] })],
);
export type SessionSettlementRow = typeof sessionSettlements.$inferSelect;

export const sessionCosts = book.table(
  'session_cost',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    sessionSettlementId: uuid('session_settlement_id').notNull(),
    position: smallint('position').notNull(),
    kind: text('kind').notNull(),
    what: text('what').notNull(),
    supplyId: uuid('supply_id'),
    pieces: integer('pieces'),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
    borneBy: text('borne_by').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.sessionSettlementId, table.position] })],
);
export type SessionCostRow = typeof sessionCosts.$inferSelect;

export const sessionShares = book.table(
  'session_share',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    sessionSettlementId: uuid('session_settlement_id').notNull(),
    position: smallint('position').notNull(),
    householdId: uuid('household_id').notNull(),
    containers: integer('containers').notNull(),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
  },
  (table) => [
    primaryKey({
      columns: [table.storehouseId, table.sessionSettlementId, table.position, table.householdId],
    }),
  ],
);
export type SessionShareRow = typeof sessionShares.$inferSelect;
