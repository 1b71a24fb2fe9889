import { sql } from 'drizzle-orm';
import { bigint, boolean, integer, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const foods = book.table(
  'food',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    foodId: uuid('food_id').notNull().default(sql`uuidv7()`),
    foodCode: text('food_code').notNull(),
    nameEn: text('name_en').notNull(),
    nameEs: text('name_es').notNull(),
    foodGroup: text('food_group').notNull(),
    isOwn: boolean('is_own').notNull(),
    kilocaloriesPer100Grams: integer('kilocalories_per_100_grams'),
    proteinMilligramsPer100Grams: integer('protein_milligrams_per_100_grams'),
    fatMilligramsPer100Grams: integer('fat_milligrams_per_100_grams'),
    carbohydrateMilligramsPer100Grams: integer('carbohydrate_milligrams_per_100_grams'),
    fibreMilligramsPer100Grams: integer('fibre_milligrams_per_100_grams'),
    bulkMicrogramsPerMillilitre: integer('bulk_micrograms_per_millilitre'),
    allergens: text('allergens').array().notNull(),
    gluten: text('gluten').notNull(),
    keepingClass: text('keeping_class'),
    needsMoistureTest: boolean('needs_moisture_test').notNull(),
    source: text('source').notNull(),
    sourceRelease: text('source_release').notNull(),
    sourceNumber: text('source_number').notNull(),
    version: integer('version').notNull().default(1),
    retiredAt: timestamp('retired_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.foodId] })],
);
export type FoodRow = typeof foods.$inferSelect;

export const containerKinds = book.table(
  'container_kind',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    containerKindId: uuid('container_kind_id').notNull().default(sql`uuidv7()`),
    kindCode: text('kind_code').notNull(),
    nameEn: text('name_en').notNull(),
    nameEs: text('name_es').notNull(),
    isOwn: boolean('is_own').notNull(),
    capacityMicrolitres: bigint('capacity_microlitres', { mode: 'number' }).notNull(),
    tareGrams: integer('tare_grams'),
    priceMinorUnits: bigint('price_minor_units', { mode: 'number' }),
    source: text('source').notNull(),
    barrier: text('barrier'),
    isDark: boolean('is_dark').notNull().default(false),
    isBreakable: boolean('is_breakable').notNull().default(false),
    isRodentProof: boolean('is_rodent_proof').notNull().default(false),
    needsOuter: boolean('needs_outer').notNull().default(false),
    isReusable: boolean('is_reusable').notNull().default(false),
    mostStacked: integer('most_stacked'),
    traitsSource: text('traits_source').notNull().default(''),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.containerKindId] })],
);
export type ContainerKindRow = typeof containerKinds.$inferSelect;

export const suppliers = book.table(
  'supplier',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    supplierId: uuid('supplier_id').notNull(),
    ownerKind: text('owner_kind').notNull().default('supplier'),
    name: text('name').notNull(),
    contact: text('contact').notNull().default(''),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.supplierId] })],
);
export type SupplierRow = typeof suppliers.$inferSelect;

export const supplyPrices = book.table(
  'supply_price',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    supplyCode: text('supply_code').notNull(),
    priceMinorUnits: bigint('price_minor_units', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.supplyCode] })],
);
export type SupplyPriceRow = typeof supplyPrices.$inferSelect;
