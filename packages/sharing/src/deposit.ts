import { assert, assertWhole, ceilFraction, fraction, roundFraction } from '@sheafbook/units';

/**
 * The deposit on an estimate: a whole per cent of it, rounded up to whole units of the currency.
 * Units: minor units; `percent` is whole per cent, 40 for 40 %; `currencyExponent` is the currency's number of decimals.
 * Errors: AssertionError when a number is not whole and ≥ 0, or the exponent is above 4.
 */
export function depositMinorUnits(estimateMinorUnits: number, percent: number, currencyExponent = 2): number {
  assertWhole(estimateMinorUnits, 'estimateMinorUnits');
  assertWhole(percent, 'percent');
  assertWhole(currencyExponent, 'currencyExponent');
  assert(currencyExponent <= 4, 'no currency has more than 4 decimals');
  const unit = 10n ** BigInt(currencyExponent);
  const wholeUnits = ceilFraction(fraction(BigInt(estimateMinorUnits) * BigInt(percent), 100n * unit));
  return Number(wholeUnits * unit);
}

/** How a deposit meets a charge: what of it pays, what goes back, what is still owed. Units: minor units. Errors: none. */
export type DepositSettlement = {
  readonly appliedMinorUnits: number;
  readonly refundMinorUnits: number;
  readonly balanceMinorUnits: number;
};

/**
 * Sets a deposit against the charge of the same buy. Applied + refund = deposit, applied + balance = charge.
 * Units: minor units. Errors: AssertionError when an amount is not whole and ≥ 0.
 */
export function settleDeposit(depositHeldMinorUnits: number, chargeMinorUnits: number): DepositSettlement {
  assertWhole(depositHeldMinorUnits, 'depositHeldMinorUnits');
  assertWhole(chargeMinorUnits, 'chargeMinorUnits');
  const appliedMinorUnits = Math.min(depositHeldMinorUnits, chargeMinorUnits);
  return {
    appliedMinorUnits,
    refundMinorUnits: depositHeldMinorUnits - appliedMinorUnits,
    balanceMinorUnits: chargeMinorUnits - appliedMinorUnits,
  };
}

/**
 * The store fund's levy on the goods of a buy, to the nearest minor unit, a half going up. It is its own cost line.
 * Units: minor units; `percentHundredths` is hundredths of a per cent, 250 for 2.5 %.
 * Errors: AssertionError when a number is not whole and ≥ 0.
 */
export function levyMinorUnits(goodsMinorUnits: number, percentHundredths: number): number {
  assertWhole(goodsMinorUnits, 'goodsMinorUnits');
  assertWhole(percentHundredths, 'percentHundredths');
  return Number(roundFraction(fraction(BigInt(goodsMinorUnits) * BigInt(percentHundredths), 10_000n)));
}
