/**
 * How a cost is borne: by grams awarded, by goods value, evenly by household, or a blend whose
 * `numerator/denominator` part goes by weight and the rest by household. Units: the blend is a pure number from 0 to 1.
 * Errors: none; `chargeLandedCost` checks.
 */
export type FreightBasis =
  | { readonly kind: 'by-weight' }
  | { readonly kind: 'by-value' }
  | { readonly kind: 'per-household' }
  | { readonly kind: 'blend'; readonly numerator: number; readonly denominator: number };

/**
 * Someone who may be charged. A household with an award bears a per-household part, and so does one that withdrew
 * after ordering though its award is 0; common stock is no household and bears none; a household that got nothing
 * because nothing was there for it bears none. Units: none. Errors: none; `chargeLandedCost` checks.
 */
export type LandedOwner = {
  readonly ownerId: string;
  readonly seat: number;
  readonly isHousehold: boolean;
  readonly bearsHouseholdPart: boolean;
};

/**
 * The goods of one food after the credits known by then, and the grams awarded of it.
 * Units: minor units of the storehouse's currency; grams, or any one unit of mass. Errors: none.
 */
export type GoodsLine = {
  readonly costLineId: string;
  readonly netMinorUnits: number;
  readonly awards: readonly { readonly ownerId: string; readonly grams: number }[];
};

/** Freight, a levy or another cost; negative for a rebate. Units: minor units. Errors: none. */
export type OtherLine = {
  readonly costLineId: string;
  readonly minorUnits: number;
  readonly basis: FreightBasis;
};

/** What `chargeLandedCost` is asked. Units: minor units of one currency; grams. Errors: none. */
export type LandedCostInput = {
  readonly owners: readonly LandedOwner[];
  readonly goods: readonly GoodsLine[];
  readonly others: readonly OtherLine[];
};

/**
 * One owner's part of a cost line. `gotSpareUnit` marks the odd minor unit of the largest remainders.
 * Units: minor units; `weight` in grams, minor units of goods, or households, by the line's basis. Errors: none.
 */
export type ChargedShare = {
  readonly ownerId: string;
  readonly minorUnits: number;
  readonly weight: number;
  readonly gotSpareUnit: boolean;
};

/** A cost line divided among all owners, in seat order, the shares adding up to it. Units: minor units. Errors: none. */
export type ChargedLine = {
  readonly costLineId: string;
  readonly minorUnits: number;
  readonly shares: readonly ChargedShare[];
};

/** What an owner is charged over all lines. Units: minor units. Errors: none. */
export type LandedTotal = { readonly ownerId: string; readonly minorUnits: number };
