import { PUBLISHED_AGEING } from './ageing.ts';
import type { HowKnown } from './place-history.ts';

/** How warm something was kept, as it may be told to whoever gets it. Units: none. Errors: none. */
export const WARMTH_BANDS = ['cool', 'warm', 'unknown'] as const;
/** One of `WARMTH_BANDS`. Units: none. Errors: none. */
export type WarmthBand = (typeof WARMTH_BANDS)[number];

/**
 * How warm something was kept since it was packed: cool where it aged nowhere faster than at 70 °F, unknown as soon as some
 * of its past is. Where exactly it stood and how warm it was there is its owner's.
 * Units: tenths of a degree Celsius, of the steady warmth that ages alike. Errors: none. Source: the bands are common practice,
 * no source; 70 °F is the reference of `PUBLISHED_AGEING`.
 */
export function warmthBandOf(
  stays: readonly { readonly steadyTenths: number; readonly known: HowKnown }[],
): WarmthBand {
  if (stays.length === 0 || stays.some(({ known }) => known === 'unknown')) return 'unknown';
  const { referenceTenths } = PUBLISHED_AGEING;
  return stays.every(({ steadyTenths }) => steadyTenths <= referenceTenths) ? 'cool' : 'warm';
}
