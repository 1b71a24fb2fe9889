import { assertWhole } from '@sheafbook/units';

/** Where the grams of a session went. Units: whole grams. Errors: none by itself. */
export type SessionMass = {
  readonly broughtGrams: number;
  readonly inContainersGrams: number;
  readonly leftInBagsGrams: number;
  readonly spilledGrams: number;
  readonly sampledGrams: number;
};

/**
 * What a session can't account for: brought − (containers + left in bags + spilt + sampled). Above zero grams are missing,
 * below zero there is more than came.
 * Units: whole grams. Errors: AssertionError when a figure is not whole and ≥ 0.
 */
export function unaccountedGrams(mass: SessionMass): number {
  for (const [name, grams] of Object.entries(mass)) assertWhole(grams, name);
  const { broughtGrams, inContainersGrams, leftInBagsGrams, spilledGrams, sampledGrams } = mass;
  return broughtGrams - inContainersGrams - leftInBagsGrams - spilledGrams - sampledGrams;
}

/**
 * How many grams a session may fail to account for: what dust and scales explain. More needs a named cause.
 * Units: whole grams, rounded down. Errors: AssertionError when the mass is not whole and ≥ 0.
 * Source: max(50 g, 0.5 % of what was opened), common practice, no source.
 */
export function sessionToleranceGrams(broughtGrams: number): number {
  assertWhole(broughtGrams, 'broughtGrams');
  return Math.max(50, Math.floor(broughtGrams / 200));
}
