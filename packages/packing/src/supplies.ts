import { assert, assertWhole } from '@sheafbook/units';

/**
 * Spoilt pieces that a plan allows for, in whole per cent, which a group edits.
 * Units: per cent. Errors: none. Source: common practice, no source.
 */
export const SCRAP_PERCENT = { container: 3, lid: 3, absorber: 5, label: 10, carton: 0 } as const;

/**
 * Something that a day uses up.
 * Units: pieces; `packPieces` is how many a pack holds (1 when sold singly), `packMinorUnits` what a pack costs, null when
 * unknown. Errors: none by itself.
 */
export type SupplyNeed = {
  readonly supplyId: string;
  readonly units: number;
  readonly perUnit: number;
  readonly scrapPercent: number;
  readonly onHand: number;
  readonly packPieces: number;
  readonly packMinorUnits: number | null;
};

/** What to have and what to buy. Units: pieces, packs, minor units. Errors: none by itself. */
export type SupplyLine = {
  readonly supplyId: string;
  readonly neededPieces: number;
  readonly shortPieces: number;
  readonly packsToBuy: number;
  readonly costMinorUnits: number | null;
};

/**
 * The pieces that a day needs, with scrap, and the packs to buy for what is not on hand.
 * Units: pieces: need = ⌈units × per unit × (100 + scrap) / 100⌉, exact in integers.
 * Errors: AssertionError when a figure is not whole and ≥ 0, or a pack holds nothing.
 */
export function planSupply(need: SupplyNeed): SupplyLine {
  for (const [name, value] of [
    ['units', need.units],
    ['perUnit', need.perUnit],
    ['scrapPercent', need.scrapPercent],
    ['onHand', need.onHand],
    ['packPieces', need.packPieces],
  ] as const) {
    assertWhole(value, name);
  }
  assert(need.packPieces > 0, 'a pack holds at least one piece');
  const hundredths = BigInt(need.units) * BigInt(need.perUnit) * BigInt(100 + need.scrapPercent);
  const neededPieces = Number((hundredths + 99n) / 100n);
  const shortPieces = Math.max(0, neededPieces - need.onHand);
  const packsToBuy = Math.ceil(shortPieces / need.packPieces);
  const costMinorUnits = need.packMinorUnits === null ? null : packsToBuy * need.packMinorUnits;
  return { supplyId: need.supplyId, neededPieces, shortPieces, packsToBuy, costMinorUnits };
}
