import type { Allergen, FoodGroup, Gluten, KeepingClass, Words } from './food.ts';

/** What a food is to the people who eat and keep it, beside its figures. Units: none. Errors: none. */
export type FoodTraits = {
  readonly foodCode: string;
  readonly en: string;
  readonly es: string;
  readonly group: FoodGroup;
  readonly allergens: readonly Allergen[];
  readonly gluten: Gluten;
  readonly keepingClass: KeepingClass;
  readonly remark?: Words;
};

const CROSS_CONTACT: Words = {
  en: 'Often grown or milled beside wheat: gluten is possible unless the pack is certified.',
  es: 'Suele cultivarse o molerse junto al trigo: puede llevar gluten si el envase no está certificado.',
};

const grain = { group: 'grains', allergens: [], gluten: 'no', keepingClass: 'whole-grain-hard' } as const;
const wheat = { ...grain, allergens: ['wheat'], gluten: 'yes' } as const;
const softWheat = { ...wheat, keepingClass: 'whole-grain-soft' } as const;
const oats = { ...grain, gluten: 'cross-contact', remark: CROSS_CONTACT } as const;
const legume = { group: 'legumes', allergens: [], gluten: 'no', keepingClass: 'dry-legume' } as const;
const plain = { allergens: [], gluten: 'no' } as const;

/**
 * Allergens are the nine of US law; gluten stands apart, for barley and rye carry it without being a listed allergen.
 * Lentils and buckwheat take the cautious reading beside oats (common practice, no source).
 * Units: none. Errors: none.
 */
export const FOOD_TRAITS: readonly FoodTraits[] = [
  {
    foodCode: 'wheat-hard-red-winter',
    en: 'Hard red winter wheat',
    es: 'Trigo duro rojo de invierno',
    ...wheat,
  },
  {
    foodCode: 'wheat-hard-red-spring',
    en: 'Hard red spring wheat',
    es: 'Trigo duro rojo de primavera',
    ...wheat,
  },
  {
    foodCode: 'wheat-soft-red-winter',
    en: 'Soft red winter wheat',
    es: 'Trigo blando rojo de invierno',
    ...softWheat,
  },
  { foodCode: 'wheat-hard-white', en: 'Hard white wheat', es: 'Trigo duro blanco', ...wheat },
  { foodCode: 'wheat-soft-white', en: 'Soft white wheat', es: 'Trigo blando blanco', ...softWheat },
  { foodCode: 'wheat-durum', en: 'Durum wheat', es: 'Trigo durum', ...wheat },
  { foodCode: 'khorasan-wheat', en: 'Khorasan wheat', es: 'Trigo khorasan', ...wheat },
  { foodCode: 'spelt', en: 'Spelt', es: 'Espelta', ...wheat },
  {
    foodCode: 'flour-whole-wheat',
    en: 'Whole-wheat flour',
    es: 'Harina integral de trigo',
    ...wheat,
    keepingClass: 'whole-meal',
  },
  { foodCode: 'flour-white', en: 'White flour', es: 'Harina blanca', ...wheat, keepingClass: 'white-flour' },
  { foodCode: 'bulgur', en: 'Bulgur', es: 'Bulgur', ...wheat, keepingClass: 'cracked-grain' },
  {
    foodCode: 'pasta',
    en: 'Dry pasta',
    es: 'Pasta seca',
    ...wheat,
    keepingClass: 'pasta',
    remark: {
      en: 'Made without egg; pasta made with egg is another food with another allergen.',
      es: 'Hecha sin huevo; la pasta al huevo es otro alimento, con otro alérgeno.',
    },
  },
  { foodCode: 'rye', en: 'Rye', es: 'Centeno', ...grain, gluten: 'yes', keepingClass: 'whole-grain-soft' },
  {
    foodCode: 'barley-hulled',
    en: 'Hulled barley',
    es: 'Cebada mondada',
    ...grain,
    gluten: 'yes',
    keepingClass: 'hulled-barley',
  },
  {
    foodCode: 'barley-pearled',
    en: 'Pearled barley',
    es: 'Cebada perlada',
    ...grain,
    gluten: 'yes',
    keepingClass: 'pearled-barley',
  },
  { foodCode: 'oats-rolled', en: 'Rolled oats', es: 'Copos de avena', ...oats, keepingClass: 'rolled-oats' },
  {
    foodCode: 'oats-whole',
    en: 'Whole oats',
    es: 'Avena en grano',
    ...oats,
    keepingClass: 'whole-grain-soft',
  },
  {
    foodCode: 'rice-white-long',
    en: 'White rice, long grain',
    es: 'Arroz blanco largo',
    ...grain,
    keepingClass: 'white-rice',
  },
  {
    foodCode: 'rice-brown-long',
    en: 'Brown rice, long grain',
    es: 'Arroz integral largo',
    ...grain,
    keepingClass: 'brown-rice',
  },
  { foodCode: 'corn-yellow', en: 'Yellow corn', es: 'Maíz amarillo', ...grain },
  {
    foodCode: 'cornmeal-whole',
    en: 'Whole cornmeal',
    es: 'Harina integral de maíz',
    ...grain,
    keepingClass: 'whole-meal',
  },
  { foodCode: 'millet', en: 'Millet', es: 'Mijo', ...grain },
  { foodCode: 'quinoa', en: 'Quinoa', es: 'Quinua', ...grain, keepingClass: 'whole-grain-soft' },
  {
    foodCode: 'buckwheat',
    en: 'Buckwheat',
    es: 'Trigo sarraceno',
    ...grain,
    gluten: 'cross-contact',
    remark: CROSS_CONTACT,
  },
  { foodCode: 'sorghum', en: 'Sorghum', es: 'Sorgo', ...grain },
  { foodCode: 'beans-pinto', en: 'Pinto beans', es: 'Frijoles pintos', ...legume },
  { foodCode: 'beans-black', en: 'Black beans', es: 'Frijoles negros', ...legume },
  { foodCode: 'beans-navy', en: 'Navy beans', es: 'Frijoles blancos pequeños', ...legume },
  { foodCode: 'beans-white', en: 'White beans', es: 'Frijoles blancos', ...legume },
  { foodCode: 'beans-kidney', en: 'Kidney beans', es: 'Frijoles rojos', ...legume },
  { foodCode: 'chickpeas', en: 'Chickpeas', es: 'Garbanzos', ...legume },
  { foodCode: 'mung-beans', en: 'Mung beans', es: 'Frijol mungo', ...legume },
  {
    foodCode: 'lentils',
    en: 'Lentils',
    es: 'Lentejas',
    ...legume,
    gluten: 'cross-contact',
    remark: CROSS_CONTACT,
  },
  { foodCode: 'peas-split-green', en: 'Green split peas', es: 'Guisantes verdes partidos', ...legume },
  {
    foodCode: 'soybeans',
    en: 'Soybeans',
    es: 'Soya',
    ...legume,
    allergens: ['soy'],
    keepingClass: 'oily-legume',
  },
  {
    foodCode: 'sugar-granulated',
    en: 'White sugar',
    es: 'Azúcar blanca',
    ...plain,
    group: 'sugars',
    keepingClass: 'sugar',
  },
  {
    foodCode: 'honey',
    en: 'Honey',
    es: 'Miel',
    ...plain,
    group: 'sugars',
    keepingClass: 'honey',
    remark: {
      en: 'Never for a child under one year: it may carry botulism spores (CDC, from memory).',
      es: 'Nunca para menores de un año: puede llevar esporas de botulismo (CDC, de memoria).',
    },
  },
  { foodCode: 'salt', en: 'Salt', es: 'Sal', ...plain, group: 'salt', keepingClass: 'salt' },
  {
    foodCode: 'milk-dry-nonfat',
    en: 'Nonfat dry milk',
    es: 'Leche en polvo descremada',
    group: 'dried-milk',
    allergens: ['milk'],
    gluten: 'no',
    keepingClass: 'dry-milk',
  },
  {
    foodCode: 'oil-soybean',
    en: 'Soybean oil',
    es: 'Aceite de soya',
    group: 'fats',
    allergens: ['soy'],
    gluten: 'no',
    keepingClass: 'oil',
    remark: {
      en: 'US law exempts highly refined soybean oil from the allergen list; it is counted as soy all the same.',
      es: 'La ley de EE. UU. exime el aceite de soya muy refinado de la lista de alérgenos; aquí cuenta como soya.',
    },
  },
  {
    foodCode: 'oil-canola',
    en: 'Canola oil',
    es: 'Aceite de canola',
    ...plain,
    group: 'fats',
    keepingClass: 'oil',
  },
];
