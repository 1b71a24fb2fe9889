import type { BuyLineRow, BuyRow, QuoteRow } from '@sheafbook/db/tables';
import { addDays } from '@sheafbook/units';

/** Something that does not forbid a quote, and that whoever chooses it should know (job map 2.3). */
export type QuoteWarning = {
  readonly code: 'valid-until-close-to-order' | 'crop-year-old' | 'bag-size-off-step';
  readonly message: string;
};

/** An order slips by a few days as a rule, so a quote should outlive its planned day by as many. */
const LEAST_DAYS_AFTER_ORDER = 3;

export function listQuoteWarnings(
  { quote, offers }: { quote: QuoteRow; offers: readonly { buyLineId: string; bagSize: number }[] },
  at: { buy: BuyRow; lines: readonly BuyLineRow[]; todayOn: string },
): QuoteWarning[] {
  const { buy, lines, todayOn } = at;
  const warnings: QuoteWarning[] = [];
  if (quote.validUntil < addDays(buy.orderOn, LEAST_DAYS_AFTER_ORDER))
    warnings.push({
      code: 'valid-until-close-to-order',
      message: `The quote stands until ${quote.validUntil}; the order is planned for ${buy.orderOn}.`,
    });
  if (quote.cropYear !== null && Number(todayOn.slice(0, 4)) - quote.cropYear > 1)
    warnings.push({
      code: 'crop-year-old',
      message: `The crop of ${quote.cropYear} is more than one year old.`,
    });
  for (const { buyLineId, bagSize } of offers) {
    const line = lines.find((candidate) => candidate.buyLineId === buyLineId);
    if (line && bagSize % line.stepUnits !== 0)
      warnings.push({
        code: 'bag-size-off-step',
        message: `A bag of ${bagSize} ${line.massUnit} is no whole number of steps of ${line.stepUnits} ${line.massUnit}.`,
      });
  }
  return warnings;
}
