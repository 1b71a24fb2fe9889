import { type ChargeTerms, listBearers, type SplitAnswer } from '@sheafbook/sharing';
import { ratioRange, type SplitRound } from '../split/use-cases.ts';
import { type Bill, type Credit, chargeBills, goodsKey, type LineAward } from './bills.ts';

/** What a comparison reckons with besides the line that is about to be split. */
export type ComparedCosts = {
  /** True while a bill isn't in: the order's figures stand for it. */
  readonly isEstimate: boolean;
  readonly bills: readonly Bill[];
  readonly credits: readonly Credit[];
  readonly withheldMinorUnits: number;
  readonly otherAwards: readonly LineAward[];
  readonly withdrawnIds: readonly string[];
  readonly standInIds: readonly string[];
  readonly terms: ChargeTerms;
};

/** What each owner would get of the line by one rule, and what it and the whole buy would cost. */
export function compareAnswer(answer: SplitAnswer, round: SplitRound, costs: ComparedCosts) {
  const { buyLineId } = round.line;
  const { commonId } = round.owners;
  const surplus = { buyLineId, ownerId: commonId, grams: answer.surplusUnits };
  const ofLine = answer.awards.map(({ ownerId, awardUnits }) => ({ buyLineId, ownerId, grams: awardUnits }));
  const awards = addUp([...costs.otherAwards, ...ofLine, surplus]);
  const isLanded = (bill: Bill) =>
    bill.kind !== 'goods' || awards.some((award) => award.buyLineId === bill.buyLineId && award.grams > 0);
  const charged = chargeBills({
    ...costs,
    bills: costs.bills.filter(isLanded),
    awards,
    owners: listBearers({ ...costs, awards, ...round.owners }),
  });
  const goods = charged.lines.find((line) => line.costLineId === goodsKey(buyLineId));
  const ratios = answer.awards.map((award) => ({
    claimGrams: award.claimUnits,
    awardGrams: award.awardUnits,
  }));
  return {
    range: ratioRange(ratios),
    shares: charged.totals.map(({ ownerId, minorUnits }) => ({
      ownerId,
      awardGrams: ofLine.find((award) => award.ownerId === ownerId)?.grams ?? 0,
      goodsMinorUnits: goods?.shares.find((share) => share.ownerId === ownerId)?.minorUnits ?? 0,
      buyMinorUnits: minorUnits,
    })),
  };
}

/** One award an owner and line: earlier rounds and this one together. */
function addUp(awards: readonly LineAward[]): LineAward[] {
  const sums = new Map<string, LineAward>();
  for (const award of awards) {
    const key = `${award.buyLineId} ${award.ownerId}`;
    sums.set(key, { ...award, grams: award.grams + (sums.get(key)?.grams ?? 0) });
  }
  return [...sums.values()];
}
