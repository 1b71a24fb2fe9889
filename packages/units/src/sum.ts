import { addFractions, type Fraction, fraction } from './fraction.ts';

/** Adds any number of numbers; nothing adds up to 0. Units: the same for all of them. Errors: none. */
export function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0);
}

/** Adds any number of fractions exactly. Units: the same for all of them. Errors: none. */
export function sumFractions(values: readonly Fraction[]): Fraction {
  return values.reduce(addFractions, fraction(0));
}
