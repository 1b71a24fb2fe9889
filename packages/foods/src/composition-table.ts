/**
 * One printed row: database number, then water in grams, kilocalories, protein, fat, carbohydrate and fibre in grams per
 * 100 g, and grams per US cup. Null where the table prints a dash.
 * Units: in each label. Errors: none.
 */
export type CompositionRow = readonly [
  databaseNumber: string,
  waterGrams: number,
  kilocalories: number,
  proteinGrams: number,
  fatGrams: number,
  carbohydrateGrams: number,
  fibreGrams: number | null,
  gramsPerCup: number | null,
];

/** The table that every row below is read from, and the release its figures belong to. Units: none. Errors: none. */
export const COMPOSITION_SOURCE = { table: 'USDA SR', release: 'SR28' } as const;

/**
 * The grams per cup are not in the abbreviated file; they were read from the weight file of the release before.
 * Units: none. Errors: none.
 */
export const CUP_SOURCE = 'USDA SR, weight file of the release before SR28: grams per US cup';

/**
 * What 100 g of each food hold. Later releases revised several pulses (lentils, split peas, navy beans), which is why
 * the release stands with each food. Units: as `CompositionRow`. Errors: none.
 * Source: USDA ARS, National Nutrient Database for Standard Reference, release 28, abbreviated file.
 */
export const COMPOSITION_TABLE: Readonly<Record<string, CompositionRow>> = {
  'wheat-hard-red-winter': ['20072', 13.1, 327, 12.61, 1.54, 71.18, 12.2, 192],
  'wheat-hard-red-spring': ['20071', 12.76, 329, 15.4, 1.92, 68.03, 12.2, 192],
  'wheat-soft-red-winter': ['20073', 12.17, 331, 10.35, 1.56, 74.24, 12.5, null],
  'wheat-hard-white': ['20074', 9.57, 342, 11.31, 1.71, 75.9, 12.2, 192],
  'wheat-soft-white': ['20075', 10.42, 340, 10.69, 1.99, 75.36, 12.7, null],
  'wheat-durum': ['20076', 10.94, 339, 13.68, 2.47, 71.13, null, null],
  'khorasan-wheat': ['20138', 11.07, 337, 14.54, 2.13, 70.58, 11.1, 186],
  spelt: ['20140', 11.02, 338, 14.57, 2.43, 70.19, 10.7, 174],
  'flour-whole-wheat': ['20080', 10.74, 340, 13.21, 2.5, 71.97, 10.7, 120],
  'flour-white': ['20081', 11.92, 364, 10.33, 0.98, 76.31, 2.7, 125],
  bulgur: ['20012', 9, 342, 12.29, 1.33, 75.87, 12.5, null],
  pasta: ['20120', 9.9, 371, 13.04, 1.51, 74.67, 3.2, null],
  rye: ['20062', 10.6, 338, 10.34, 1.63, 75.86, 15.1, 169],
  'barley-hulled': ['20004', 9.44, 354, 12.48, 2.3, 73.48, 17.3, 184],
  'barley-pearled': ['20005', 10.09, 352, 9.91, 1.16, 77.72, 15.6, 200],
  'oats-rolled': ['08120', 10.84, 379, 13.15, 6.52, 67.7, 10.1, 81],
  'oats-whole': ['20038', 8.22, 389, 16.89, 6.9, 66.27, 10.6, 156],
  'rice-white-long': ['20044', 11.62, 365, 7.13, 0.66, 79.95, 1.3, 185],
  'rice-brown-long': ['20036', 11.8, 367, 7.54, 3.2, 76.25, 3.6, 185],
  'corn-yellow': ['20014', 10.37, 365, 9.42, 4.74, 74.26, 7.3, 166],
  'cornmeal-whole': ['20020', 10.26, 362, 8.12, 3.59, 76.89, 7.3, 122],
  millet: ['20031', 8.67, 378, 11.02, 4.22, 72.85, 8.5, 200],
  quinoa: ['20035', 13.28, 368, 14.12, 6.07, 64.16, 7, 170],
  buckwheat: ['20008', 9.75, 343, 13.25, 3.4, 71.5, 10, 170],
  sorghum: ['20067', 12.4, 329, 10.62, 3.46, 72.09, 6.7, null],
  'beans-pinto': ['16042', 11.33, 347, 21.42, 1.23, 62.55, 15.5, 193],
  'beans-black': ['16014', 11.02, 341, 21.6, 1.42, 62.36, 15.5, 194],
  'beans-navy': ['16037', 12.1, 337, 22.33, 1.5, 60.75, 15.3, 208],
  'beans-white': ['16049', 11.32, 333, 23.36, 0.85, 60.27, 15.2, 202],
  'beans-kidney': ['16027', 11.75, 333, 23.58, 0.83, 60.01, 24.9, 184],
  chickpeas: ['16056', 7.68, 378, 20.47, 6.04, 62.95, 12.2, 200],
  'mung-beans': ['16080', 9.05, 347, 23.86, 1.15, 62.62, 16.3, 207],
  lentils: ['16069', 8.26, 352, 24.63, 1.06, 63.35, 10.7, 192],
  'peas-split-green': ['16085', 8.62, 352, 23.82, 1.16, 63.74, 25.5, 197],
  soybeans: ['16108', 8.54, 446, 36.49, 19.94, 30.16, 9.3, 186],
  'sugar-granulated': ['19335', 0.02, 387, 0, 0, 99.98, 0, 200],
  honey: ['19296', 17.1, 304, 0.3, 0, 82.4, 0.2, 339],
  salt: ['02047', 0.2, 0, 0, 0, 0, 0, 292],
  'milk-dry-nonfat': ['01091', 3.16, 362, 36.16, 0.77, 51.98, 0, 120],
  'oil-soybean': ['04044', 0, 884, 0, 100, 0, 0, 218],
  'oil-canola': ['04582', 0, 884, 0, 100, 0, 0, null],
};
