import { sql } from 'drizzle-orm';
import { bigint, boolean, integer, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';
import { instant } from './columns.ts';

export const offers = book.table(
  'offer',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    offerId: uuid('offer_id').notNull().default(sql`uuidv7()`),
    householdId: uuid('household_id'),
    foodId: uuid('food_id').notNull(),
    priceKind: text('price_kind').notNull(),
    windowHours: integer('window_hours').notNull(),
    offeredAt: instant('offered_at').notNull(),
    openAt: instant('open_at').notNull(),
    closesAt: instant('closes_at').notNull(),
    goesToPantry: boolean('goes_to_pantry').notNull(),
    note: text('note').notNull().default(''),
    offeredBy: uuid('offered_by').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.offerId] })],
);
export type OfferRow = typeof offers.$inferSelect;

export const offerContainers = book.table(
  'offer_container',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    offerId: uuid('offer_id').notNull(),
    containerId: uuid('container_id').notNull(),
    grams: bigint('grams', { mode: 'number' }).notNull(),
    priceMinorUnits: bigint('price_minor_units', { mode: 'number' }).notNull(),
    offeredAt: instant('offered_at').notNull(),
    closesAt: instant('closes_at').notNull(),
    endedAt: instant('ended_at'),
    endedHow: text('ended_how'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.offerId, table.containerId] })],
);
export type OfferContainerRow = typeof offerContainers.$inferSelect;

export const offerTurns = book.table(
  'offer_turn',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    offerId: uuid('offer_id').notNull(),
    householdId: uuid('household_id').notNull(),
    groupNo: integer('group_no').notNull(),
    fromAt: instant('from_at').notNull(),
    untilAt: instant('until_at').notNull(),
    passedAt: instant('passed_at'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.offerId, table.householdId] })],
);
export type OfferTurnRow = typeof offerTurns.$inferSelect;

export const offerClaims = book.table(
  'offer_claim',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    offerId: uuid('offer_id').notNull(),
    containerId: uuid('container_id').notNull(),
    householdId: uuid('household_id').notNull(),
    entryId: uuid('entry_id').notNull(),
    claimedAt: instant('claimed_at').notNull(),
    claimedBy: uuid('claimed_by').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.offerId, table.containerId] })],
);
export type OfferClaimRow = typeof offerClaims.$inferSelect;
