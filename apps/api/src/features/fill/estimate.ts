import type { ChargeTerms } from '@sheafbook/sharing';
import type { Solver } from '@sheafbook/solve';
import { sumOf } from '@sheafbook/units';
import type { BuyFill } from './answer.ts';
import { fillBuy } from './assemble.ts';
import { awardsOf, type Estimates, estimateCharges } from './charges.ts';
import type { FillInputs } from './inputs.ts';
import { type LineTips, listTips } from './tipping.ts';

/** A fill with what it would cost each household and what a little more would do. */
export type FillEstimate = {
  readonly inputs: FillInputs;
  readonly fill: BuyFill;
  readonly estimates: Estimates;
  readonly tips: readonly LineTips[];
};

export const solveEstimate = (inputs: FillInputs, rules: ChargeTerms, solver: Solver): FillEstimate =>
  toEstimate(inputs, fillBuy(inputs, solver), rules);

/** The estimate of a fill that is known already, such as the stored one or one set by hand. */
export function toEstimate(inputs: FillInputs, fill: BuyFill, rules: ChargeTerms): FillEstimate {
  const { commonOwnerId } = inputs;
  const estimates = estimateCharges(awardsOf(fill, commonOwnerId), {
    freightMinorUnits: sumOf(fill.baskets.map((basket) => basket.freightMinorUnits)),
    rules,
    seats: new Map(inputs.pledges.map(({ householdId, seat }) => [householdId, seat])),
    commonOwnerId,
  });
  return { inputs, fill, estimates, tips: listTips(inputs, fill) };
}

export const estimateOf = ({ estimates }: FillEstimate, ownerId: string): number =>
  estimates.owners.find((owner) => owner.ownerId === ownerId)?.minorUnits ?? 0;
