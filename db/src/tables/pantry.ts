import { sql } from 'drizzle-orm';
import { bigint, boolean, integer, primaryKey, smallint, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';
import { day, instant } from './columns.ts';

export const pantries = book.table(
  'pantry',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    pantryId: uuid('pantry_id').notNull().default(sql`uuidv7()`),
    name: text('name').notNull(),
    address: text('address').notNull(),
    timeZone: text('time_zone').notNull(),
    contactDuty: text('contact_duty').notNull(),
    contact: text('contact').notNull(),
    distanceMetres: integer('distance_metres').notNull(),
    isRetired: boolean('is_retired').notNull().default(false),
    cardVersion: integer('card_version').notNull().default(1),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.pantryId] })],
);
export type PantryRow = typeof pantries.$inferSelect;

export const pantryCards = book.table(
  'pantry_card',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    pantryId: uuid('pantry_id').notNull(),
    cardVersion: integer('card_version').notNull(),
    acceptsMakerSealed: boolean('accepts_maker_sealed'),
    acceptsHomePacked: boolean('accepts_home_packed'),
    acceptsLicensedKitchen: boolean('accepts_licensed_kitchen'),
    acceptsReducedOxygen: boolean('accepts_reduced_oxygen'),
    mostDaysPastBest: integer('most_days_past_best'),
    pastBestClasses: text('past_best_classes').array(),
    leastLifeDays: integer('least_life_days').notNull(),
    containerKindCodes: text('container_kind_codes').array(),
    labelFacts: text('label_facts').array().notNull(),
    foodCodesWanted: text('food_codes_wanted').array(),
    foodCodesNotWanted: text('food_codes_not_wanted').array().notNull(),
    allergensNotTaken: text('allergens_not_taken').array().notNull(),
    wantsAllergensApart: boolean('wants_allergens_apart'),
    takesCold: boolean('takes_cold'),
    givesReceipt: boolean('gives_receipt'),
    mostGramsPerVisit: bigint('most_grams_per_visit', { mode: 'number' }),
    mostGramsPerWeek: bigint('most_grams_per_week', { mode: 'number' }),
    note: text('note').notNull(),
    confirmedOn: day('confirmed_on').notNull(),
    confirmedBy: text('confirmed_by').notNull(),
    writtenBy: uuid('written_by').notNull(),
    writtenAt: instant('written_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.pantryId, table.cardVersion] })],
);
export type PantryCardRow = typeof pantryCards.$inferSelect;

export const pantryOpenings = book.table(
  'pantry_opening',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    pantryId: uuid('pantry_id').notNull(),
    cardVersion: integer('card_version').notNull(),
    weekday: smallint('weekday').notNull(),
    opensAt: text('opens_at').notNull(),
    closesAt: text('closes_at').notNull(),
  },
  (table) => [
    primaryKey({
      columns: [table.storehouseId, table.pantryId, table.cardVersion, table.weekday, table.opensAt],
    }),
  ],
);
export type PantryOpeningRow = typeof pantryOpenings.$inferSelect;
