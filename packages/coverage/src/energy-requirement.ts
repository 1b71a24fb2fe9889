import {
  asFraction,
  assert,
  compareFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  sumFractions,
} from '@sheafbook/units';
import type { Activity } from './eater.ts';

/** The activity categories of the equations. Units: none. Errors: none. */
export type ActivityCategory = 'inactive' | 'low-active' | 'active' | 'very-active';

/** Whom an equation is for. Units: exact years, centimetres, kilograms. Errors: none by itself. */
export type MeasuredPerson = {
  readonly sex: 'female' | 'male';
  readonly ageYears: Fraction;
  readonly heightCentimetres: number;
  readonly massKilograms: number;
  readonly category: ActivityCategory;
};

type Coefficients = { readonly base: number; readonly height: number; readonly mass: number };
type Equation = { readonly age: number } & Readonly<Record<ActivityCategory, Coefficients>>;

/** Units: none. Errors: none. Source: of every coefficient in this file. */
export const EQUATION_SOURCE =
  'Dietary Reference Intakes for Energy (National Academies, 2023), summary table S-1; coefficients from memory, agreeing with three other texts';

/** Which category of the equations each of the three activities is read as. Units: none. Errors: none. */
export const ACTIVITY_CATEGORY: Readonly<Record<Activity, ActivityCategory>> = {
  sedentary: 'inactive',
  moderate: 'low-active',
  active: 'active',
};

const MEN: Equation = {
  age: -10.83,
  inactive: { base: 753.07, height: 6.5, mass: 14.1 },
  'low-active': { base: 581.47, height: 8.3, mass: 14.94 },
  active: { base: 1004.82, height: 6.52, mass: 15.91 },
  'very-active': { base: -517.88, height: 15.61, mass: 19.11 },
};
const WOMEN: Equation = {
  age: -7.01,
  inactive: { base: 584.9, height: 5.72, mass: 11.71 },
  'low-active': { base: 575.77, height: 6.6, mass: 12.14 },
  active: { base: 710.25, height: 6.54, mass: 12.34 },
  'very-active': { base: 511.83, height: 9.07, mass: 12.56 },
};
const BOYS: Equation = {
  age: 3.68,
  inactive: { base: -447.51, height: 13.01, mass: 13.15 },
  'low-active': { base: 19.12, height: 8.62, mass: 20.28 },
  active: { base: -388.19, height: 12.66, mass: 20.46 },
  'very-active': { base: -671.75, height: 15.38, mass: 23.25 },
};
const GIRLS: Equation = {
  age: -22.25,
  inactive: { base: 55.59, height: 8.43, mass: 17.07 },
  'low-active': { base: -297.54, height: 12.77, mass: 14.73 },
  active: { base: -189.55, height: 11.74, mass: 18.34 },
  'very-active': { base: -709.59, height: 18.22, mass: 14.25 },
};

/** What growing takes, by completed years up to and with `toAge`; it agrees with one other text only. */
const GROWTH = {
  male: [
    { toAge: 3, kilocalories: 20 },
    { toAge: 8, kilocalories: 15 },
    { toAge: 13, kilocalories: 25 },
    { toAge: 18, kilocalories: 20 },
  ],
  female: [
    { toAge: 8, kilocalories: 15 },
    { toAge: 13, kilocalories: 30 },
    { toAge: 18, kilocalories: 20 },
  ],
} as const;

/**
 * Estimated energy requirement from age, height and mass, ages 3 and over.
 * Units: kilocalories a day, an exact fraction of the decimals given. May come out at 0 or less for a height and a
 * mass that no person has. Errors: AssertionError below 3 years, or when height or mass is not above 0.
 * Source: EQUATION_SOURCE.
 */
export function energyRequirement(person: MeasuredPerson): Fraction {
  assert(compareFractions(person.ageYears, fraction(3)) >= 0, 'the equations start at 3 years');
  assert(person.heightCentimetres > 0, 'a height must be above 0');
  assert(person.massKilograms > 0, 'a mass must be above 0');
  const years = Number(person.ageYears.numerator / person.ageYears.denominator);
  const equation = equationFor(person.sex, years);
  const { base, height, mass } = equation[person.category];
  return sumFractions([
    asFraction(base),
    multiplyFractions(asFraction(equation.age), person.ageYears),
    multiplyFractions(asFraction(height), asFraction(person.heightCentimetres)),
    multiplyFractions(asFraction(mass), asFraction(person.massKilograms)),
    fraction(GROWTH[person.sex].find((row) => years <= row.toAge)?.kilocalories ?? 0),
  ]);
}

function equationFor(sex: 'female' | 'male', years: number): Equation {
  if (sex === 'male') return years < 19 ? BOYS : MEN;
  return years < 19 ? GIRLS : WOMEN;
}
