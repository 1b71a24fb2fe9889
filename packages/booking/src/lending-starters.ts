/** The sorts of things with usual terms. Units: none. Errors: none. */
export const STARTER_CODES = [
  'can-sealer',
  'mill',
  'dolly',
  'scale',
  'thermometer',
  'seam-gauge',
  'extension-cord',
] as const;

/** One of `STARTER_CODES`. Units: none. Errors: none. */
export type StarterCode = (typeof STARTER_CODES)[number];

/**
 * The terms that a thing starts with until its keeper says otherwise. A scale and a thermometer have no service here, since the
 * check with a known weight or temperature tells when they want one.
 * Units: whole hours that it is kept free before and after each use, days of the longest loan, uses and days between services;
 * null where it has no such interval. Errors: none by itself.
 */
export type LendingStarter = {
  readonly preHours: number;
  readonly postHours: number;
  readonly longestDays: number;
  readonly serviceEveryUses: number | null;
  readonly serviceEveryDays: number | null;
  readonly touchesFood: boolean;
  readonly isScale: boolean;
  readonly isThermometer: boolean;
};

const PLAIN: LendingStarter = {
  preHours: 0,
  postHours: 0,
  longestDays: 3,
  serviceEveryUses: null,
  serviceEveryDays: null,
  touchesFood: false,
  isScale: false,
  isThermometer: false,
};

/**
 * The usual terms of what groups lend: a sealer is cleaned and oiled for half a day after each loan, a mill brushed out for a
 * whole one, a scale checked for an hour.
 * Units: as `LendingStarter`. Errors: none. Source: common practice, no source.
 */
export const LENDING_STARTERS: Readonly<Record<StarterCode, LendingStarter>> = {
  'can-sealer': { ...PLAIN, postHours: 12, serviceEveryUses: 500, serviceEveryDays: 180 },
  mill: { ...PLAIN, postHours: 24, serviceEveryDays: 365, touchesFood: true },
  dolly: PLAIN,
  scale: { ...PLAIN, postHours: 1, isScale: true },
  thermometer: { ...PLAIN, isThermometer: true },
  'seam-gauge': { ...PLAIN, serviceEveryDays: 365 },
  'extension-cord': { ...PLAIN, serviceEveryDays: 365 },
};
