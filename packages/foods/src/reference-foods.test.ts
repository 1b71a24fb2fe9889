import { describe, expect, test } from 'vitest';
import { ALLERGENS, FOOD_GROUPS, type Food, KEEPING_CLASSES } from './food.ts';
import { findReferenceFood, REFERENCE_FOODS } from './reference-foods.ts';

function codesWhere(condition: (food: Food) => boolean): readonly string[] {
  return REFERENCE_FOODS.filter(condition).map((food) => food.foodCode);
}

describe('the reference foods', () => {
  test('are at least thirty, each with its own code, names and database number', () => {
    expect(REFERENCE_FOODS.length).toBeGreaterThanOrEqual(30);
    const keys = [
      REFERENCE_FOODS.map((food) => food.foodCode),
      REFERENCE_FOODS.map((food) => food.names.en),
      REFERENCE_FOODS.map((food) => food.names.es),
      REFERENCE_FOODS.map((food) => food.source.databaseNumber),
    ];
    expect(keys.map((list) => new Set(list).size)).toEqual(keys.map(() => REFERENCE_FOODS.length));
    expect(codesWhere((food) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(food.foodCode))).toEqual([]);
  });

  test('carry their source: table, release and database number', () => {
    const unsourced = codesWhere(({ source }) => {
      return (
        source.table !== 'USDA SR' || source.release !== 'SR28' || !/^\d{5}$/.test(source.databaseNumber)
      );
    });
    expect(unsourced).toEqual([]);
    expect(codesWhere((food) => food.bulkSource.trim() === '')).toEqual([]);
  });

  test('fill every group but the one for a group’s own foods, and every keeping class', () => {
    const filled = FOOD_GROUPS.filter((group) => codesWhere((food) => food.group === group).length > 0);
    expect(filled).toEqual(FOOD_GROUPS.filter((group) => group !== 'other'));
    const unused = KEEPING_CLASSES.filter(
      (name) => codesWhere((food) => food.keepingClass === name).length === 0,
    );
    expect(unused).toEqual([]);
  });

  test('are found by code, and an unknown code finds nothing', () => {
    expect(findReferenceFood('lentils')?.names).toEqual({ en: 'Lentils', es: 'Lentejas' });
    expect(findReferenceFood('toString')).toBeUndefined();
  });
});

describe('what may harm an eater', () => {
  test('wheat means any Triticum', () => {
    expect(codesWhere((food) => food.allergens.includes('wheat'))).toEqual([
      'wheat-hard-red-winter',
      'wheat-hard-red-spring',
      'wheat-soft-red-winter',
      'wheat-hard-white',
      'wheat-soft-white',
      'wheat-durum',
      'khorasan-wheat',
      'spelt',
      'flour-whole-wheat',
      'flour-white',
      'bulgur',
      'pasta',
    ]);
  });

  test('soy and milk are named where they are, and nothing else is a listed allergen', () => {
    expect(codesWhere((food) => food.allergens.includes('soy'))).toEqual(['soybeans', 'oil-soybean']);
    expect(codesWhere((food) => food.allergens.includes('milk'))).toEqual(['milk-dry-nonfat']);
    const named = REFERENCE_FOODS.flatMap((food) => food.allergens);
    expect([...new Set(named)].toSorted()).toEqual(['milk', 'soy', 'wheat']);
    expect(ALLERGENS).toHaveLength(9);
  });

  test('barley and rye carry gluten without being a listed allergen; all wheat carries it', () => {
    expect(codesWhere((food) => food.gluten === 'yes' && !food.allergens.includes('wheat'))).toEqual([
      'rye',
      'barley-hulled',
      'barley-pearled',
    ]);
    expect(codesWhere((food) => food.allergens.includes('wheat') && food.gluten !== 'yes')).toEqual([]);
  });

  test('oats, buckwheat and lentils count as touched by gluten and say why', () => {
    const touched = REFERENCE_FOODS.filter((food) => food.gluten === 'cross-contact');
    expect(touched.map((food) => food.foodCode)).toEqual([
      'oats-rolled',
      'oats-whole',
      'buckwheat',
      'lentils',
    ]);
    expect(touched.filter((food) => food.remark === null)).toEqual([]);
  });

  test('every grain, legume and flour needs a moisture test, and nothing else does', () => {
    expect(codesWhere((food) => !food.needsMoistureTest)).toEqual([
      'sugar-granulated',
      'honey',
      'salt',
      'milk-dry-nonfat',
      'oil-soybean',
      'oil-canola',
    ]);
  });
});

describe('what 100 g hold', () => {
  test('water, protein, fat and carbohydrate never weigh more than the food, and fibre is part of carbohydrate', () => {
    const impossible = codesWhere((food) => {
      const { waterMilligramsPer100Grams: water, proteinMilligramsPer100Grams: protein } = food;
      const solids = protein + food.fatMilligramsPer100Grams + food.carbohydrateMilligramsPer100Grams;
      const fibre = food.fibreMilligramsPer100Grams ?? 0;
      return water + solids > 100_100 || fibre > food.carbohydrateMilligramsPer100Grams;
    });
    expect(impossible).toEqual([]); // 100.1 g: each of four figures is rounded to 0.01 g or coarser
  });

  // Atwater's general factors 4, 9, 4 kcal per gram; the table uses factors of each food, which lie within 12 % of them.
  test('the energy agrees with protein, fat and carbohydrate', () => {
    const astray = codesWhere((food) => {
      const { proteinMilligramsPer100Grams: protein, fatMilligramsPer100Grams: fat } = food;
      const estimate = (4 * (protein + food.carbohydrateMilligramsPer100Grams) + 9 * fat) / 1000;
      return Math.abs(estimate - food.kilocaloriesPer100Grams) > 0.12 * food.kilocaloriesPer100Grams;
    });
    expect(astray).toEqual([]);
  });
});
