import type { ALLERGENS, FOOD_GROUPS, KEEPING_CLASSES } from '@sheafbook/foods';
import type { Problems } from '../../ui/field.tsx';
import { partsTyped, shownPart } from '../../ui/parts-typed.ts';
import type { Food } from './queries.ts';

export type Allergen = (typeof ALLERGENS)[number];

/** A food as it is typed. `hasNone` states that none of the nine is in it, which an empty list alone would not. */
export type FoodDraft = {
  readonly nameEn: string;
  readonly nameEs: string;
  readonly foodGroup: (typeof FOOD_GROUPS)[number];
  readonly keepingClass: (typeof KEEPING_CLASSES)[number] | '';
  readonly kilocalories: string;
  readonly protein: string;
  readonly fat: string;
  readonly carbohydrate: string;
  readonly fibre: string;
  readonly bulk: string;
  readonly allergens: readonly Allergen[];
  readonly hasNone: boolean;
  readonly gluten: 'yes' | 'no' | 'cross-contact' | '';
  readonly needsMoistureTest: boolean;
  readonly source: string;
};

/** What the parts of the form share. */
export type FieldsProps = {
  draft: FoodDraft;
  change: (part: Partial<FoodDraft>) => void;
  problems: Problems;
};

export const NO_FOOD: FoodDraft = {
  nameEn: '',
  nameEs: '',
  foodGroup: 'grains',
  keepingClass: '',
  kilocalories: '',
  protein: '',
  fat: '',
  carbohydrate: '',
  fibre: '',
  bulk: '',
  allergens: [],
  hasNone: false,
  gluten: '',
  needsMoistureTest: false,
  source: '',
};

const THOUSAND = 1000;
const MILLION = 1_000_000;

/** A food as it stands, to be changed. */
export function draftOfFood(food: Food): FoodDraft {
  return {
    nameEn: food.nameEn,
    nameEs: food.nameEs,
    foodGroup: food.foodGroup as FoodDraft['foodGroup'],
    keepingClass: (food.keepingClass ?? '') as FoodDraft['keepingClass'],
    kilocalories: String(food.kilocaloriesPer100Grams ?? ''),
    protein: shownPart(food.proteinMilligramsPer100Grams, THOUSAND),
    fat: shownPart(food.fatMilligramsPer100Grams, THOUSAND),
    carbohydrate: shownPart(food.carbohydrateMilligramsPer100Grams, THOUSAND),
    fibre: shownPart(food.fibreMilligramsPer100Grams, THOUSAND),
    bulk: shownPart(food.bulkMicrogramsPerMillilitre, MILLION),
    allergens: food.allergens as Allergen[],
    hasNone: food.allergens.length === 0,
    gluten: food.gluten as FoodDraft['gluten'],
    needsMoistureTest: food.needsMoistureTest,
    source: food.source,
  };
}

/** The figures as the API wants them; `undefined` where what was typed is no number. */
export function figuresOf(draft: FoodDraft) {
  return {
    kilocaloriesPer100Grams: partsTyped(draft.kilocalories, 1),
    proteinMilligramsPer100Grams: partsTyped(draft.protein, THOUSAND),
    fatMilligramsPer100Grams: partsTyped(draft.fat, THOUSAND),
    carbohydrateMilligramsPer100Grams: partsTyped(draft.carbohydrate, THOUSAND),
    fibreMilligramsPer100Grams: partsTyped(draft.fibre, THOUSAND),
    bulkMicrogramsPerMillilitre: partsTyped(draft.bulk, MILLION),
  };
}
