import { sumOf } from '@sheafbook/units';
import type { Bill, Credit, LineAward } from './bills.ts';

/** Whether the supplier has granted or refused the claim behind a credit. */
export type AnsweredCredit = Credit & { readonly isAnswered: boolean };

/**
 * Of foods that cost something and of which nothing could be shared, what was promised: once the supplier has answered
 * the claim about such a food, what it does not grant is charged to those it was promised to. Common stock's promise
 * stays out, since it is charged by lots and has none. Common practice, no source.
 */
export function promisesOfLost(facts: {
  readonly bills: readonly Bill[];
  readonly credits: readonly AnsweredCredit[];
  readonly awards: readonly LineAward[];
  readonly promised: readonly LineAward[];
  readonly commonId: string;
}): LineAward[] {
  const { bills, credits, awards, promised, commonId } = facts;
  const isLost = (buyLineId: string): boolean => {
    const isOfLine = (row: { readonly buyLineId: string | null }) => row.buyLineId === buyLineId;
    const answered = credits.filter(isOfLine);
    const goods = bills.filter((bill) => bill.kind === 'goods' && isOfLine(bill));
    const netMinorUnits =
      sumOf(goods.map((bill) => bill.minorUnits)) - sumOf(answered.map((credit) => credit.minorUnits));
    const isAnswered = answered.length > 0 && answered.every((credit) => credit.isAnswered);
    return isAnswered && netMinorUnits > 0 && !awards.some((award) => isOfLine(award) && award.grams > 0);
  };
  return promised.filter(
    ({ buyLineId, ownerId, grams }) => grams > 0 && ownerId !== commonId && isLost(buyLineId),
  );
}
