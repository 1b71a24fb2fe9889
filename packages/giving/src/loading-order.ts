import { compareText } from '@sheafbook/units';

/** What is to be unloaded at one door. Units: distance in any one unit; ISO days. Errors: none. */
export type Stop<Load> = { readonly distance: number; readonly loads: readonly Load[] };

/** Something in the van with the last day on which its pantry takes it. Units: an ISO day. Errors: none. */
export type VanLoad = { readonly code: string; readonly giftClosesOn: string };

/**
 * A pantry day's loads in the order in which they go into the van: what is unloaded last goes in first, so the farthest door
 * leads; at one door what closes first leads, so that it is never what is left behind.
 * Units: as `Stop`. Errors: none. Source: common practice, no source.
 */
export function loadingOrder<Load extends VanLoad>(stops: readonly Stop<Load>[]): Load[] {
  return stops
    .map((stop, position) => ({ ...stop, position }))
    .toSorted((a, b) => b.distance - a.distance || b.position - a.position)
    .flatMap(({ loads }) =>
      loads.toSorted((a, b) => compareText(a.giftClosesOn, b.giftClosesOn) || compareText(a.code, b.code)),
    );
}
