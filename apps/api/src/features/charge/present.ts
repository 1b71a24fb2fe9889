import { seesAllCharges, seesAllComparisons } from './policy.ts';
import type { Charges, Comparison } from './use-cases.ts';

/** What a buy cost and who bears it. A member sees each cost line and their own part of it. */
export function presentCharges(charges: Charges) {
  const { actor, buy, owners, lines, totals } = charges;
  const sees = seesAllCharges(actor);
  const isVisible = (ownerId: string) => sees || ownerId === actor.householdId;
  const nameOf = (ownerId: string) => ({ seat: owners.seatOf(ownerId), name: owners.nameOf(ownerId) });
  return {
    buyId: buy.buyId,
    stage: buy.stage,
    currency: actor.currency,
    chargedMinorUnits: lines.reduce((sum, line) => sum + line.minorUnits, 0),
    clearingMinorUnits: charges.clearingMinorUnits,
    commonStockMinorUnits: charges.commonMinorUnits,
    totals: totals
      .filter((total) => isVisible(total.householdId))
      .map(({ householdId, amountMinorUnits }) => ({
        householdId,
        ...nameOf(householdId),
        minorUnits: amountMinorUnits,
      }))
      .toSorted((a, b) => a.seat - b.seat),
    lines: lines.map((line) => ({
      id: line.chargeLineId,
      costLine: line.costLine,
      buyLineId: line.buyLineId,
      minorUnits: line.minorUnits,
      weightSum: line.shares.reduce((sum, share) => sum + share.weight, 0),
      shares: line.shares
        .filter((share) => isVisible(share.ownerId))
        .map(({ ownerId, minorUnits, weight, gotSpareUnit }) => ({
          ownerId,
          isCommonStock: ownerId === owners.commonId,
          ...nameOf(ownerId),
          minorUnits,
          weight,
          gotSpareUnit,
        }))
        .toSorted((a, b) => a.seat - b.seat),
    })),
  };
}

/** The rules side by side. A member sees their own shares, and how far apart all shares lie under each rule. */
export function presentComparison({ actor, round, isEstimate, rules }: Comparison) {
  const { owners } = round;
  const isVisible = ({ ownerId }: { ownerId: string }) =>
    seesAllComparisons(actor) || ownerId === actor.householdId;
  return {
    lineId: round.line.buyLineId,
    foodCode: round.food.foodCode,
    roundNo: round.roundNo,
    availableGrams: round.availableGrams,
    defaultRule: round.defaultRule,
    currency: actor.currency,
    isEstimate,
    rules: rules.map(({ answer, range, shares }) => ({
      rule: answer.rule,
      sentence: answer.sentence,
      surplusGrams: answer.surplusUnits,
      ratioRange: range,
      shares: answer.awards.filter(isVisible).map(({ ownerId, claimUnits, awardUnits }) => {
        const cost = shares.find((share) => share.ownerId === ownerId);
        return {
          ownerId,
          seat: owners.seatOf(ownerId),
          name: owners.nameOf(ownerId),
          claimGrams: claimUnits,
          awardGrams: awardUnits,
          goodsMinorUnits: cost?.goodsMinorUnits ?? 0,
          buyMinorUnits: cost?.buyMinorUnits ?? 0,
        };
      }),
    })),
  };
}
