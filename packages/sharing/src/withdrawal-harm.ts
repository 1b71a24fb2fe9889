import { assertWhole } from '@sheafbook/units';

/** A household's estimated charge. Units: minor units. Errors: none. */
export type ChargeEstimate = { readonly ownerId: string; readonly estimateMinorUnits: number };

/** What a withdrawal costs the others, and what of the deposit pays for it. Units: minor units. Errors: none. */
export type WithdrawalHarm = {
  readonly harmMinorUnits: number;
  readonly withheldMinorUnits: number;
  readonly refundMinorUnits: number;
};

/**
 * What a household that withdraws after *fixed* but before the order owes the others: every rise of another's estimate
 * once the bags are filled again without it, plus the value of mass that this leaves unfilled. The deposit pays for it as
 * far as it reaches. Someone in only one of the two lists is not harmed: it left too, or came in anew.
 * Units: minor units. Shape: withheld + refund = deposit.
 * Errors: AssertionError when an amount is not whole and ≥ 0.
 */
export function withdrawalHarm(input: {
  readonly withdrawerId: string;
  readonly before: readonly ChargeEstimate[];
  readonly after: readonly ChargeEstimate[];
  readonly newUnfilledMinorUnits: number;
  readonly depositMinorUnits: number;
}): WithdrawalHarm {
  const { withdrawerId, before, after, newUnfilledMinorUnits, depositMinorUnits } = input;
  assertWhole(newUnfilledMinorUnits, 'newUnfilledMinorUnits');
  assertWhole(depositMinorUnits, 'depositMinorUnits');
  for (const estimate of [...before, ...after])
    assertWhole(estimate.estimateMinorUnits, 'estimateMinorUnits');
  const earlier = new Map(before.map(({ ownerId, estimateMinorUnits }) => [ownerId, estimateMinorUnits]));
  const rises = after
    .filter(({ ownerId }) => ownerId !== withdrawerId)
    .map(({ ownerId, estimateMinorUnits }) =>
      Math.max(0, estimateMinorUnits - (earlier.get(ownerId) ?? estimateMinorUnits)),
    );
  const harmMinorUnits = rises.reduce((sum, rise) => sum + rise, newUnfilledMinorUnits);
  const withheldMinorUnits = Math.min(harmMinorUnits, depositMinorUnits);
  return { harmMinorUnits, withheldMinorUnits, refundMinorUnits: depositMinorUnits - withheldMinorUnits };
}
