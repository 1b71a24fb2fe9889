import { compareUnitPrices } from '@sheafbook/sharing';
import type { Solver } from '@sheafbook/solve';
import { sortedJson } from '@sheafbook/units';
import type { BuyFill, LineAnswer, PledgeAnswer } from './answer.ts';
import { fillBuy } from './assemble.ts';
import { findTerms } from './guards.ts';
import { FILL_METHOD_VERSION, type FillInputs } from './inputs.ts';

/** A pledge as its fill judged it, in the units of its line. */
export type JudgedPledge = {
  readonly pledgeId: string;
  readonly least: number;
  readonly wanted: number;
  readonly most: number;
  readonly step: number;
  readonly allotted: number;
  readonly isWithinCeiling: boolean;
};

export type Refilled = {
  /** Null where nothing can be said: set by hand, or made by an older way of filling. */
  readonly isSame: boolean | null;
  /** Null where the fill never claimed to be the best. */
  readonly isBest: boolean | null;
  readonly pledges: readonly JudgedPledge[];
};

/**
 * Fills a buy again from what was frozen with its fill, and compares the bytes. The caller's transaction has a task
 * that may read ceilings; what comes back holds none.
 */
export function refill(
  stored: { inputs: unknown; answer: unknown; methodVersion: number; overrideReason: string },
  solver: Solver,
): Refilled {
  const [inputs, answer] = [stored.inputs as FillInputs, stored.answer as BuyFill];
  const isComparable = stored.overrideReason === '' && stored.methodVersion === FILL_METHOD_VERSION;
  const isSame = isComparable ? sortedJson(fillBuy(inputs, solver)) === sortedJson(answer) : null;
  const isClaimedBest = answer.baskets.every((basket) => basket.certificate.isProvenBest);
  const pledges = answer.lines.flatMap((line) =>
    line.pledges.flatMap((pledge) => judge(inputs, line, pledge)),
  );
  return { isSame, isBest: isClaimedBest ? isSame : null, pledges };
}

/** A pledge with no step between its least and most on this line has no terms, and so must have got nothing. */
function judge(inputs: FillInputs, line: LineAnswer, { pledgeId, units }: PledgeAnswer): JudgedPledge[] {
  const terms = findTerms(inputs, { lineId: line.lineId, quoteId: line.quoteId, pledgeId });
  if (!terms && units === 0) return [];
  const { least = 0, wanted = 0, most = 0, step = 1, ceiling = null } = terms ?? {};
  const isWithinCeiling =
    ceiling === null || line.landedPrice === null || compareUnitPrices(line.landedPrice, ceiling) <= 0;
  return [{ pledgeId, least, wanted, most, step, allotted: units, isWithinCeiling }];
}
