import { asFraction, assert, divideFractions, type Fraction, fraction, sumFractions } from '@sheafbook/units';
import { type Age, ageOn, yearsOf } from './age.ts';
import type { EaterFacts } from './eater.ts';
import { ACTIVITY_CATEGORY, EQUATION_SOURCE, energyRequirement } from './energy-requirement.ts';
import { ACTIVITY_COLUMN, ENERGY_TABLE, TODDLER_TABLE } from './energy-table.ts';

/** Where an energy need comes from; a typed figure goes before an equation, and that before the table. Units: none. Errors: none. */
export type EnergyBasis = 'typed' | 'equation' | 'table' | 'unknown-under-2';

/**
 * What an eater needs on a full day at this table, and how well that is known.
 * Units: kilocalories a day, exact; `note` is one or more plain sentences, empty when there is nothing to add.
 * Errors: none by itself.
 */
export type DailyKilocalories = {
  readonly kilocalories: Fraction;
  readonly basis: EnergyBasis;
  readonly note: string;
  readonly source: string;
};

const MEAN_NOTE = 'Sex is not stated: the mean of the two columns.';
const TODDLER_SOURCE =
  'Dietary Guidelines for Americans 2020-2025, appendix 2, table A2-1; from memory, agreeing with a transcription';
const TODDLER_NOTE = 'Figure for the second year is from memory: type in what this child is given.';
const INFANT_NOTE = 'No figure is held for the first year: counted as 0 until one is typed in.';

/**
 * The energy an eater needs on a full day, not yet weighed by the part of the year that they are present.
 * Units: kilocalories a day. Someone not born yet, and a child in its first year without a typed figure, count as 0
 * and the note says so; nothing is guessed for pregnancy, nursing or illness, which are typed in.
 * Errors: AssertionError when a day does not exist, or a typed figure, height or mass is not above 0.
 * Source: beside the answer.
 */
export function dailyKilocalories(eater: EaterFacts, today: string): DailyKilocalories {
  const age = ageOn(eater.birthOn, today);
  if (!age.isBorn) return unknown('Not born yet: counted as 0.');
  if (eater.typedKilocalories !== null) return typed(eater.typedKilocalories);
  if (age.months < 12) return unknown(INFANT_NOTE);
  if (age.years < 2) return byToddlerTable(eater, age);
  return byEquation(eater, age) ?? byTable(eater, age);
}

function unknown(note: string): DailyKilocalories {
  return { kilocalories: fraction(0), basis: 'unknown-under-2', note, source: 'none' };
}

function typed(kilocalories: number): DailyKilocalories {
  assert(kilocalories > 0, `a typed energy need must be above 0, got ${kilocalories}`);
  return {
    kilocalories: asFraction(kilocalories),
    basis: 'typed',
    note: '',
    source: 'typed in by the household',
  };
}

function byToddlerTable(eater: EaterFacts, age: Age): DailyKilocalories {
  const row = TODDLER_TABLE.findLast(({ fromMonths }) => fromMonths <= age.months);
  assert(row, 'the second year starts at 12 months');
  const kilocalories = bySex(eater, (sex) => fraction(row[sex]));
  return { kilocalories, basis: 'unknown-under-2', note: notes(eater, TODDLER_NOTE), source: TODDLER_SOURCE };
}

function byTable(eater: EaterFacts, age: Age): DailyKilocalories {
  const row = ENERGY_TABLE.find(({ fromAge, toAge }) => fromAge <= age.years && age.years <= toAge);
  assert(row, 'the table has a row for every age from 2');
  const column = ACTIVITY_COLUMN[eater.activity];
  const kilocalories = bySex(eater, (sex) => fraction(row[sex][column]));
  return { kilocalories, basis: 'table', note: notes(eater, row.conflict), source: row.source };
}

/** Nothing when height or mass is not told, below 3 years, or when the two fit no person and the result is not above 0. */
function byEquation(eater: EaterFacts, age: Age): DailyKilocalories | undefined {
  const { heightCentimetres, massKilograms } = eater;
  if (heightCentimetres === null || massKilograms === null || age.years < 3) return undefined;
  const kilocalories = bySex(eater, (sex) => {
    const category = ACTIVITY_CATEGORY[eater.activity];
    return energyRequirement({ sex, ageYears: yearsOf(age), heightCentimetres, massKilograms, category });
  });
  if (kilocalories.numerator <= 0n) return undefined;
  return { kilocalories, basis: 'equation', note: notes(eater, ''), source: EQUATION_SOURCE };
}

function bySex(eater: EaterFacts, read: (sex: 'female' | 'male') => Fraction): Fraction {
  if (eater.sex !== 'unstated') return read(eater.sex);
  return divideFractions(sumFractions([read('female'), read('male')]), fraction(2));
}

function notes(eater: EaterFacts, note: string): string {
  return [eater.sex === 'unstated' ? MEAN_NOTE : '', note].filter(Boolean).join(' ');
}
