import { assertWhole } from '@sheafbook/units';

/**
 * Whether a re-priced total is more than a few percent above the estimate that households agreed to; then the
 * buy must be fixed again before it is ordered.
 * Units: minor units; `percent` whole percent, 2 unless the group chooses another (common practice, no
 * source).
 * Errors: AssertionError when a number is not whole and ≥ 0.
 */
export function isPriceNowAbove(
  estimateMinorUnits: number,
  repricedMinorUnits: number,
  percent = 2,
): boolean {
  assertWhole(estimateMinorUnits, 'estimateMinorUnits');
  assertWhole(repricedMinorUnits, 'repricedMinorUnits');
  assertWhole(percent, 'percent');
  return BigInt(repricedMinorUnits) * 100n > BigInt(estimateMinorUnits) * BigInt(100 + percent);
}
