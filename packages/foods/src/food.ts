/**
 * The groups that a year's ration is counted in; a food outside them is `other` and counts for energy alone.
 * Units: none. Errors: none.
 */
export const FOOD_GROUPS = ['grains', 'legumes', 'dried-milk', 'fats', 'sugars', 'salt', 'other'] as const;

/** One of the groups of `FOOD_GROUPS`. Units: none. Errors: none. */
export type FoodGroup = (typeof FOOD_GROUPS)[number];

/**
 * The nine major allergens of US law. Barley and rye are not among them though they carry gluten: that is `Gluten`.
 * `wheat` means any Triticum, so spelt, khorasan and durum too.
 * Units: none. Errors: none.
 * Source: Food Allergen Labeling and Consumer Protection Act 2004, and FASTER Act 2021 for sesame (from memory).
 */
export const ALLERGENS = [
  'milk',
  'egg',
  'fish',
  'crustacean-shellfish',
  'tree-nuts',
  'peanuts',
  'wheat',
  'soy',
  'sesame',
] as const;

/** One of `ALLERGENS`. Units: none. Errors: none. */
export type Allergen = (typeof ALLERGENS)[number];

/**
 * Whether a food carries gluten. `cross-contact`: it has none of its own, but is so often grown or milled beside wheat
 * that it counts as carrying some unless certified (common practice, no source).
 * Units: none. Errors: none.
 */
export type Gluten = 'yes' | 'no' | 'cross-contact';

/** What a person reads, in both languages. Units: none. Errors: none. */
export type Words = { readonly en: string; readonly es: string };

/** Where a row of composition stands in a published table. Units: none. Errors: none. */
export type FoodSource = {
  readonly table: string;
  readonly release: string;
  readonly databaseNumber: string;
};

/**
 * How heavy the food lies in a container filled level and not shaken: `basis` says what the figure was made from,
 * `source` where that stands, or why there is none.
 * Units: milligrams per millilitre (the same figure as kg/m³), rounded to three decimals; null when unknown.
 * Errors: none by itself.
 */
export type BulkDensity = {
  readonly bulkMilligramsPerMillilitre: number | null;
  readonly bulkBasis: 'cup' | 'test-weight' | null;
  readonly bulkSource: string;
};

/**
 * What 100 g of a food hold as bought. Water is the table's average and never stands in for a measured moisture.
 * Units: whole kilocalories and whole milligrams per 100 g; fibre is part of the carbohydrate and null where the table
 * gives none. Errors: none by itself.
 */
export type Composition = {
  readonly kilocaloriesPer100Grams: number;
  readonly proteinMilligramsPer100Grams: number;
  readonly fatMilligramsPer100Grams: number;
  readonly carbohydrateMilligramsPer100Grams: number;
  readonly fibreMilligramsPer100Grams: number | null;
  readonly waterMilligramsPer100Grams: number;
};

/**
 * A food that a storehouse may buy, keep and eat. An empty `allergens` states that it has none of the nine.
 * Units: see `Composition` and `BulkDensity`; `gramsPerCup` in grams per US cup. Errors: none by itself.
 */
export type Food = Composition &
  BulkDensity & {
    readonly foodCode: string;
    readonly names: Words;
    readonly group: FoodGroup;
    readonly gramsPerCup: number | null;
    readonly allergens: readonly Allergen[];
    readonly gluten: Gluten;
    readonly keepingClass: KeepingClass;
    readonly needsMoistureTest: boolean;
    readonly remark: Words | null;
    readonly source: FoodSource;
  };

/**
 * The kinds of food that keep alike; how long each keeps in which pack is worked out elsewhere from these names. Which
 * whole grains count as hard and which as soft is common practice, no source.
 * Units: none. Errors: none.
 */
export const KEEPING_CLASSES = [
  'whole-grain-hard',
  'whole-grain-soft',
  'hulled-barley',
  'pearled-barley',
  'rolled-oats',
  'white-rice',
  'brown-rice',
  'whole-meal',
  'white-flour',
  'cracked-grain',
  'pasta',
  'dry-legume',
  'oily-legume',
  'dry-milk',
  'sugar',
  'honey',
  'salt',
  'oil',
] as const;

/** One of `KEEPING_CLASSES`. Units: none. Errors: none. */
export type KeepingClass = (typeof KEEPING_CLASSES)[number];

/** A keeping class as it was written down; null when nobody has said one. Units: none. Errors: none. */
export function readKeepingClass(text: string | null): KeepingClass | null {
  return KEEPING_CLASSES.find((keepingClass) => keepingClass === text) ?? null;
}
