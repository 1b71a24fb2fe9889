/**
 * The vessels that are no vessel: where mass comes from, and where it goes when it leaves the storehouse.
 * Units: none. Errors: none.
 */
export const OUTSIDE_KINDS = [
  'supplier',
  'eaten',
  'given',
  'animals',
  'composted',
  'spilled',
  'sampled',
  'discarded',
  'transformed',
  'unexplained',
  'moisture',
] as const;

/** One of the outside vessels. Units: none. Errors: none. */
export type OutsideKind = (typeof OUTSIDE_KINDS)[number];

/**
 * What holds stock: a numbered bag, a labelled container, and the kitchen of a household, where it is out of its container.
 * Units: none. Errors: none.
 */
export const STOCK_KINDS = ['bag', 'container', 'kitchen'] as const;

/** What a vessel is: something that holds stock, or the outside. Units: none. Errors: none. */
export type VesselKind = (typeof STOCK_KINDS)[number] | OutsideKind;

const outsideKinds: ReadonlySet<string> = new Set(OUTSIDE_KINDS);

/** Tells whether a vessel stands for the outside. Units: none. Errors: none. */
export const isOutside = (kind: VesselKind): kind is OutsideKind => outsideKinds.has(kind);
