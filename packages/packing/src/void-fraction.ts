import type { KeepingClass } from '@sheafbook/foods';

const LOOSE = 0.5;

/**
 * The part of a filled volume that is air between the kernels, for planning absorbers; a wider one is the safer guess.
 * Units: fraction by volume. Errors: none.
 * Source: planning values (common practice, no source) within the range of ANSI/ASAE D241.4 (from memory).
 */
export const VOID_FRACTIONS: Readonly<Partial<Record<KeepingClass, number>>> = {
  'whole-grain-hard': 0.4,
  'whole-grain-soft': LOOSE,
  'hulled-barley': LOOSE,
  'pearled-barley': LOOSE,
  'rolled-oats': 0.55,
  'white-rice': 0.4,
  'brown-rice': 0.4,
  'white-flour': 0.6,
  'whole-meal': 0.6,
  'dry-legume': 0.4,
  'oily-legume': 0.4,
};

/** The part of a filled volume that is air; half of it where nobody says. Units: fraction by volume. Errors: none. */
export const voidFractionOf = (keepingClass: KeepingClass | null): number =>
  (keepingClass === null ? undefined : VOID_FRACTIONS[keepingClass]) ?? LOOSE;
