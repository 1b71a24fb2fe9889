/**
 * Equal containers of one lot that may be given.
 * Units: containers, whole grams each. Shape: `visits` are the positions of those whose card takes it on that day.
 * Errors: none by itself.
 */
export type GiftLot = {
  readonly lotId: string;
  readonly containers: number;
  readonly containerGrams: number;
  readonly visits: readonly number[];
};

/** One trip to one pantry. Units: whole grams it takes, distance in any one unit. Errors: none by itself. */
export type Visit = { readonly visitId: string; readonly capacityGrams: number; readonly distance: number };

/** Containers of one lot on one trip. Units: containers. Errors: none by itself. */
export type GiftPiece = { readonly lotId: string; readonly visitId: string; readonly containers: number };

/** What goes where, and what stays. Units: whole grams, distance. Errors: none by itself. */
export type Matching = {
  readonly pieces: readonly GiftPiece[];
  readonly givenGrams: number;
  readonly distance: number;
  readonly leftContainers: readonly { readonly lotId: string; readonly containers: number }[];
};
