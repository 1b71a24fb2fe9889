/** The words of container labels, in both languages: the second has the type of the first. */
export const labelEn = {
  title: 'Container labels',
  net: (masses: string) => `Net ${masses}`,
  netByPen: 'Net ______________',
  packed: (day: string, treatment: string) => `Packed ${day}, ${treatment}`,
  untold: 'treatment not known',
  contains: (names: string) => `Contains ${names}.`,
  noAllergens: 'None of the nine allergens was declared.',
  gluten: 'gluten',
  glutenMayBe: 'May have met gluten.',
  packedWith: (names: string) => `Packed on a line with ${names}.`,
  ownerAndLot: (owner: string, lot: string) => (lot === '' ? owner : `${owner} · lot ${lot}`),
  eatFirst: (year: number, isEstimate: boolean) =>
    isEstimate ? `Eat by about ${year} (estimate)` : `Eat by ${year}`,
  eatFirstUnknown: 'Eat by: ______________',
  offer: (year: number) => `offer in ${year}`,
  inspectBy: (day: string) => `inspect by ${day}`,
  caution: 'Look and smell before you eat it.',
  oxygenFreeCaution: 'Packed without oxygen: if it is swollen, wet or smells wrong, do not eat it.',
  packer: (storehouse: string) => `Packed at home, ${storehouse}`,
};

export const labelEs: typeof labelEn = {
  title: 'Etiquetas de envases',
  net: (masses) => `Neto ${masses}`,
  netByPen: 'Neto ______________',
  packed: (day, treatment) => `Envasado ${day}, ${treatment}`,
  untold: 'tratamiento no sabido',
  contains: (names) => `Contiene ${names}.`,
  noAllergens: 'No se declaró ninguno de los nueve alérgenos.',
  gluten: 'gluten',
  glutenMayBe: 'Puede haber tocado gluten.',
  packedWith: (names) => `Envasado en una línea con ${names}.`,
  ownerAndLot: (owner, lot) => (lot === '' ? owner : `${owner} · lote ${lot}`),
  eatFirst: (year, isEstimate) =>
    isEstimate ? `Comer hacia ${year} (estimado)` : `Comer antes de fin de ${year}`,
  eatFirstUnknown: 'Comer antes de: ______________',
  offer: (year) => `ofrecer en ${year}`,
  inspectBy: (day) => `revisar antes del ${day}`,
  caution: 'Mírelo y huélalo antes de comerlo.',
  oxygenFreeCaution: 'Envasado sin oxígeno: si está hinchado, húmedo o huele mal, no lo coma.',
  packer: (storehouse) => `Envasado en casa, ${storehouse}`,
};

export const allergensEn: Readonly<Record<string, string>> = {
  milk: 'milk',
  egg: 'egg',
  fish: 'fish',
  'crustacean-shellfish': 'crustacean shellfish',
  'tree-nuts': 'tree nuts',
  peanuts: 'peanuts',
  wheat: 'wheat',
  soy: 'soy',
  sesame: 'sesame',
};
export const allergensEs: Readonly<Record<string, string>> = {
  milk: 'leche',
  egg: 'huevo',
  fish: 'pescado',
  'crustacean-shellfish': 'crustáceos',
  'tree-nuts': 'frutos secos de árbol',
  peanuts: 'cacahuates',
  wheat: 'trigo',
  soy: 'soja',
  sesame: 'sésamo',
};
