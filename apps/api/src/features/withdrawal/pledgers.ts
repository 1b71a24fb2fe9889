import type { BuyFill, FillInputs } from '../fill/queries.ts';
import { findTerms } from '../fill/use-cases.ts';
import type { LinePledger } from './place-line.ts';

/**
 * The other pledgers of a line as the buy was fixed. A pledge that its ceiling kept out, or that its substitute served,
 * does not wait for more. A household with two pledges on the line stands with the sum of both, in the smaller step.
 */
export function listLinePledgers(
  { inputs, fill }: { inputs: FillInputs; fill: BuyFill },
  { lineId, leavingIds }: { lineId: string; leavingIds: ReadonlySet<string> },
): LinePledger[] {
  const line = fill.lines.find((known) => known.lineId === lineId);
  const pledgers = new Map<string, LinePledger>();
  for (const { pledgeId, householdId, dropped } of line?.pledges ?? []) {
    const isWaiting = dropped !== 'ceiling' && dropped !== 'substitute';
    const terms = findTerms(inputs, { lineId, quoteId: line?.quoteId ?? null, pledgeId });
    const pledgeOrder = inputs.pledges.findIndex((pledge) => pledge.pledgeId === pledgeId);
    const seat = inputs.pledges[pledgeOrder]?.seat ?? 0;
    if (!isWaiting || !terms || leavingIds.has(householdId)) continue;
    const before = pledgers.get(householdId);
    pledgers.set(householdId, {
      householdId,
      seat,
      pledgeOrder: before?.pledgeOrder ?? pledgeOrder,
      leastUnits: Math.min(before?.leastUnits ?? terms.least, terms.least),
      wantedUnits: (before?.wantedUnits ?? 0) + terms.wanted,
      mostUnits: (before?.mostUnits ?? 0) + terms.most,
      stepUnits: Math.min(before?.stepUnits ?? terms.step, terms.step),
    });
  }
  return [...pledgers.values()];
}
