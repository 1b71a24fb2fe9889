import { assert, assertWhole, type Fraction, fraction, roundFraction } from '@sheafbook/units';

/**
 * One step of a carrier's tariff: from a weight on, so much for each `perMass` of weight.
 * Units: one unit of mass of the tariff's own (pounds or kilograms, whole) for `fromMass` and `perMass` (100
 * in a tariff by the hundredweight); minor units. Errors: none.
 */
export type FreightRate = {
  readonly fromMass: number;
  readonly minorUnits: number;
  readonly perMass: number;
};

/**
 * What a tariff by weight charges: the rate of its own step, or a heavier step's rate on that step's least
 * weight when declaring more comes cheaper, as carriers do.
 * Units: whole mass units in; minor units out, a half rounded up. Shape: rates ascend, the first from 0;
 * `ratedMass` is the weight that is charged.
 * Ties: the lower rated weight. Errors: AssertionError when a number is not whole and ≥ 0 or the rates do not
 * ascend.
 */
export function rateFreight(
  rates: readonly FreightRate[],
  mass: number,
): { readonly minorUnits: number; readonly ratedMass: number } {
  assertRates(rates);
  assertWhole(mass, 'mass');
  const heavier = rates.filter((rate) => rate.fromMass > mass).map((rate) => rate.fromMass);
  const choices = [mass, ...heavier].map((ratedMass) => ({
    ratedMass,
    minorUnits: chargeFor(rates, ratedMass),
  }));
  return choices.reduce((best, choice) => (choice.minorUnits < best.minorUnits ? choice : best));
}

/**
 * The break weight between two neighbouring steps: above it, declaring the heavier step's least weight is
 * cheaper.
 * Units: mass units of the tariff, exact. Errors: AssertionError when there is no step after this one, or its
 * rate is 0.
 */
export function breakWeight(rates: readonly FreightRate[], step: number): Fraction {
  assertRates(rates);
  const [lower, upper] = [rates[step], rates[step + 1]];
  assert(lower && upper, 'a break weight lies between two steps');
  assert(lower.minorUnits > 0, 'a break weight needs a rate above 0');
  return fraction(
    BigInt(upper.fromMass) * BigInt(upper.minorUnits) * BigInt(lower.perMass),
    BigInt(upper.perMass) * BigInt(lower.minorUnits),
  );
}

function chargeFor(rates: readonly FreightRate[], mass: number): number {
  const rate = rates.findLast((step) => step.fromMass <= mass);
  assert(rate, 'the first rate begins at 0');
  return Number(roundFraction(fraction(BigInt(mass) * BigInt(rate.minorUnits), rate.perMass)));
}

function assertRates(rates: readonly FreightRate[]): void {
  assert(rates[0]?.fromMass === 0, 'the first rate must begin at 0');
  for (const [position, { fromMass, minorUnits, perMass }] of rates.entries()) {
    assertWhole(fromMass, 'fromMass');
    assertWhole(minorUnits, 'minorUnits');
    assertWhole(perMass, 'perMass');
    assert(perMass > 0, 'a rate is for at least one unit of mass');
    assert(fromMass > (rates[position - 1]?.fromMass ?? -1), 'rates must ascend by weight');
  }
}
