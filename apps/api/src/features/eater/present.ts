import type { EaterRow } from '@sheafbook/db/tables';
import { ageInYears } from '@sheafbook/units';

export function presentEater(eater: EaterRow, today: string) {
  return {
    id: eater.eaterId,
    name: eater.name,
    birthOn: eater.birthOn,
    ageYears: ageInYears(eater.birthOn, today),
    sex: eater.sex,
    activity: eater.activity,
    presentPercent: eater.presentPercent,
    heightCentimetres: eater.heightCentimetres,
    massKilograms: eater.massKilograms,
    typedKilocalories: eater.typedKilocalories,
    excludedAllergens: eater.excludedAllergens,
    excludedFoodCodes: eater.excludedFoodCodes,
    avoidsGluten: eater.avoidsGluten,
    version: eater.version,
  };
}

/** A row of CSV holds plain cells, so lists are joined by blanks; no code has one. */
export function presentEaterCells(eater: EaterRow, today: string) {
  const { excludedAllergens, excludedFoodCodes, ...cells } = presentEater(eater, today);
  return {
    ...cells,
    excludedAllergens: excludedAllergens.join(' '),
    excludedFoodCodes: excludedFoodCodes.join(' '),
  };
}
