import { assert, assertWhole, fraction, roundFraction } from '@sheafbook/units';

/** What a claim asks of the supplier for one invoice line. Units: minor units. Errors: none. */
export type ClaimValue = {
  readonly shortMinorUnits: number;
  readonly damageMinorUnits: number;
  readonly claimMinorUnits: number;
};

/**
 * The value of a claim: bags that never came at the invoice price, and for each damaged or light bag the part of
 * its declared mass that is lost, at the same price. Each damaged bag is rounded by itself, a half going up.
 * Units: minor units a bag; grams. Shape: short + damage = claim.
 * Errors: AssertionError when a number is not whole and ≥ 0, a bag declares no mass, or lost more than it declares.
 */
export function claimValue(claim: {
  readonly bagPriceMinorUnits: number;
  readonly shortBags: number;
  readonly damaged: readonly { readonly declaredGrams: number; readonly lostGrams: number }[];
}): ClaimValue {
  assertWhole(claim.bagPriceMinorUnits, 'bagPriceMinorUnits');
  assertWhole(claim.shortBags, 'shortBags');
  const shortMinorUnits = claim.shortBags * claim.bagPriceMinorUnits;
  const damageMinorUnits = claim.damaged.reduce((sum, bag) => {
    assertWhole(bag.declaredGrams, 'declaredGrams');
    assertWhole(bag.lostGrams, 'lostGrams');
    assert(bag.declaredGrams > 0, 'a damaged bag must declare its mass');
    assert(bag.lostGrams <= bag.declaredGrams, 'a bag cannot lose more than it declares');
    const priceOfLoss = fraction(BigInt(claim.bagPriceMinorUnits) * BigInt(bag.lostGrams), bag.declaredGrams);
    return sum + Number(roundFraction(priceOfLoss));
  }, 0);
  return { shortMinorUnits, damageMinorUnits, claimMinorUnits: shortMinorUnits + damageMinorUnits };
}
