import type { BuyLineBody, BuyPage, Fill, FillLine } from './buy-body.ts';

type Tip = NonNullable<NonNullable<FillLine['tips']>['tip']>;
export type LeadTip = Tip & { readonly line: BuyLineBody };

/** Whether pledges still move what a line will be. */
export const isLineAhead = (stage: string): boolean => stage === 'planning' || stage === 'gathering';

/** Of all foods the few bags more that would save those already in the most. */
export function leadTipOf(buy: BuyPage, fill: Fill): LeadTip | null {
  const tips = buy.lines.flatMap((line) => {
    const tips = fill.lines.find(({ lineId }) => lineId === line.id)?.tips;
    const tip = tips?.tip;
    // Nobody is asked for more than half as much again: that is another buy, not a few bags more.
    const isNear = tip && tip.extraUnits * 2 <= (tips.wantedUnits ?? 0);
    return isNear && tip.savedMinorUnits > 0 ? [{ ...tip, line }] : [];
  });
  return tips.toSorted((a, b) => b.savedMinorUnits - a.savedMinorUnits)[0] ?? null;
}
