import { type Missing, stageGuards } from '@sheafbook/ledger';
import { compareUnitPrices } from '@sheafbook/sharing';
import { addDays } from '@sheafbook/units';
import type { BuyFill, DropReason, LineAnswer, PledgeAnswer } from './answer.ts';
import type { FillInputs, FillPledgeFacts } from './inputs.ts';
import type { LineTips } from './tipping.ts';
import { pledgeInUnits } from './to-units.ts';

/** Everything that keeps a buy from being fixed with this fill; an empty list lets it pass. */
export function listMissing(inputs: FillInputs, fill: BuyFill, todayOn: string): Missing[] {
  const lapsed = inputs.quotes.filter(
    (quote) => quote.validUntilOn < todayOn && fill.baskets.some(({ quoteId }) => quoteId === quote.quoteId),
  );
  const quoteIds = lapsed.map((quote) => quote.quoteId);
  return [
    ...stageGuards({
      from: 'gathering',
      to: 'fixed',
      facts: {
        isFillCurrent: true, // it was run on the pledges under the same lock
        allotments: fill.lines.flatMap((line) => line.pledges.map((pledge) => judge(inputs, line, pledge))),
        supplierIdsBelowMinimum: fill.baskets
          .filter((basket) => basket.isBelowMinimum)
          .map((basket) => basket.supplierId),
      },
    }),
    ...(quoteIds.length > 0
      ? [{ code: 'quote-lapsed', count: quoteIds.length, ids: quoteIds } as const]
      : []),
  ];
}

function judge(inputs: FillInputs, line: LineAnswer, { pledgeId, units }: PledgeAnswer) {
  const terms = findTerms(inputs, { lineId: line.lineId, quoteId: line.quoteId, pledgeId });
  const ceiling = terms?.ceiling ?? null;
  const isWithinCeiling =
    ceiling === null || line.landedPrice === null || compareUnitPrices(line.landedPrice, ceiling) <= 0;
  return { pledgeId, allotted: units, most: terms?.most ?? 0, isWithinCeiling };
}

/** A pledge's least, most and step on a line, at the bags of a quote. */
export function findTerms(
  inputs: FillInputs,
  { lineId, quoteId, pledgeId }: { lineId: string; quoteId: string | null; pledgeId: string },
) {
  const pledge: FillPledgeFacts | undefined = inputs.pledges.find((known) => known.pledgeId === pledgeId);
  const line = inputs.lines.find((known) => known.lineId === lineId);
  const quote = inputs.quotes.find((known) => known.quoteId === quoteId);
  const offers = quote?.offers.filter((offer) => offer.lineId === lineId) ?? [];
  return pledge && line && offers.length > 0 ? pledgeInUnits(pledge, line, offers) : undefined;
}

export type Dropped = {
  readonly householdId: string;
  readonly pledgeId: string;
  readonly lineId: string;
  readonly reason: DropReason;
  readonly substituteLineId: string | null;
};

/** Who gets nothing of a line they pledged for, and why; each is told before the buy is fixed. */
export function listDropped(fill: BuyFill): Dropped[] {
  return fill.lines.flatMap(({ lineId, pledges }) =>
    pledges.flatMap(({ householdId, pledgeId, dropped }) => {
      if (dropped === null) return [];
      const moved = fill.substitutions.find((known) => known.pledgeId === pledgeId && known.isServed);
      return [{ householdId, pledgeId, lineId, reason: dropped, substituteLineId: moved?.toLineId ?? null }];
    }),
  );
}

export type FixingWarning =
  | {
      readonly code: 'cheaper-to-order-more';
      readonly lineId: string;
      readonly bags: number;
      readonly extraCostMinorUnits: number;
    }
  | { readonly code: 'quote-lapses-soon'; readonly quoteId: string; readonly validUntilOn: string };

/** A deposit takes about three days to come in, so a quote should stand that long after the planned order. */
const SPARE_DAYS = 3;

/** What the coordinator should look at before fixing, though nothing forbids it (job map 2.3 and 4.5). */
export function listWarnings(at: {
  inputs: FillInputs;
  fill: BuyFill;
  tips: readonly LineTips[];
  orderOn: string;
}): FixingWarning[] {
  const dead = at.tips.flatMap(({ lineId, isDeadZone, freeTip }) =>
    isDeadZone && freeTip
      ? [
          {
            code: 'cheaper-to-order-more' as const,
            lineId,
            bags: freeTip.bags,
            extraCostMinorUnits: freeTip.extraCostMinorUnits,
          },
        ]
      : [],
  );
  const soon = at.inputs.quotes
    .filter((quote) => at.fill.baskets.some((basket) => basket.quoteId === quote.quoteId && basket.grams > 0))
    .filter((quote) => quote.validUntilOn < addDays(at.orderOn, SPARE_DAYS))
    .map(({ quoteId, validUntilOn }) => ({ code: 'quote-lapses-soon' as const, quoteId, validUntilOn }));
  return [...dead, ...soon];
}
