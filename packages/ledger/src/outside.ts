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
] as const;

/** One of the outside vessels. Units: none. Errors: none. */
export type OutsideKind = (typeof OUTSIDE_KINDS)[number];

/** What a vessel is: a numbered bag, a labelled container, or the outside. Units: none. Errors: none. */
export type VesselKind = 'bag' | 'container' | OutsideKind;

const outsideKinds: ReadonlySet<string> = new Set(OUTSIDE_KINDS);

/** Tells whether a vessel stands for the outside. Units: none. Errors: none. */
export const isOutside = (kind: VesselKind): kind is OutsideKind => outsideKinds.has(kind);
