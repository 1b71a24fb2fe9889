import { isPriceNowAbove } from '@sheafbook/sharing';
import { sumOf } from '@sheafbook/units';
import type {
  CallingOffFacts,
  ClosingFacts,
  FixingFacts,
  GatheringFacts,
  LandingFacts,
  OrderingFacts,
  QuoteFact,
  ReopeningFacts,
  SharingFacts,
  StageMove,
} from './stage-facts.ts';

/** What a stage move still lacks. Units: none. Errors: none. */
export type MissingCode =
  | 'no-food-line'
  | 'no-quote'
  | 'no-closing-day'
  | 'quote-lapses-before-close'
  | 'quote-lapsed'
  | 'fill-not-run'
  | 'fill-out-of-date'
  | 'nothing-allotted'
  | 'allotment-above-most'
  | 'price-above-ceiling'
  | 'supplier-minimum-not-met'
  | 'deposit-holder-not-told'
  | 'no-reason'
  | 'second-login-missing'
  | 'deposit-unpaid'
  | 'price-risen'
  | 'line-not-counted'
  | 'bag-not-numbered'
  | 'bag-not-weighed'
  | 'line-not-split'
  | 'mass-not-shared'
  | 'invoice-missing'
  | 'claim-open'
  | 'clearing-not-zero'
  | 'deposit-held'
  | 'mass-unassigned'
  | 'cancellation-not-recorded'
  // Found by the feature that closes a buy, which charges it anew to see it.
  | 'charges-behind';

/**
 * One thing that is missing. `count` and `ids` tell how many and which (quotes, pledges, households, lines, bags, bag
 * offers, lots, suppliers or claims, by the code); the caller shows ids and amounts of households to duties that may see them only.
 * Units: `minorUnits` and `grams` as named. Errors: none.
 */
export type Missing = {
  readonly code: MissingCode;
  readonly count?: number;
  readonly ids?: readonly string[];
  readonly minorUnits?: number;
  readonly grams?: number;
};

/**
 * Lists exactly what a wanted move of a buy's stage lacks; an empty list lets it pass.
 * Units: as named in the facts. Errors: AssertionError when a price or the percent is not whole and ≥ 0.
 * Source: the guard table of job map 2, with the lapsed quote and the price that rose from its section 2.7.
 */
export function stageGuards(move: StageMove): Missing[] {
  if (move.to === 'called-off') return callingOff(move.facts, move.from === 'ordered');
  if (move.to === 'gathering')
    return move.from === 'planning' ? gathering(move.facts) : reopening(move.facts);
  if (move.to === 'fixed') return fixing(move.facts);
  if (move.to === 'ordered') return ordering(move.facts);
  if (move.to === 'landed') return landing(move.facts);
  return move.to === 'shared-out' ? sharing(move.facts) : closing(move.facts);
}

function gathering({ foodIds, quotes, gatheringClosesOn }: GatheringFacts): Missing[] {
  const isQuoted = quotes.some((quote) => foodIds.includes(quote.foodId));
  const lapsing = quotes.filter(
    (quote) => gatheringClosesOn !== null && quote.validUntilOn <= gatheringClosesOn,
  );
  return [
    ...when(foodIds.length === 0, { code: 'no-food-line' }),
    ...when(foodIds.length > 0 && !isQuoted, { code: 'no-quote' }),
    ...when(gatheringClosesOn === null, { code: 'no-closing-day' }),
    ...listed('quote-lapses-before-close', quoteIds(lapsing)),
  ];
}

function fixing({ isFillCurrent, allotments, supplierIdsBelowMinimum }: FixingFacts): Missing[] {
  const above = allotments.filter((allotment) => allotment.allotted > allotment.most);
  const tooDear = allotments.filter((allotment) => allotment.allotted > 0 && !allotment.isWithinCeiling);
  const isEmpty = allotments.every((allotment) => allotment.allotted === 0);
  return [
    ...when(isFillCurrent === null, { code: 'fill-not-run' }),
    ...when(isFillCurrent === false, { code: 'fill-out-of-date' }),
    ...when(isFillCurrent !== null && isEmpty, { code: 'nothing-allotted' }),
    ...listed('allotment-above-most', pledgeIds(above)),
    ...listed('price-above-ceiling', pledgeIds(tooDear)),
    ...listed('supplier-minimum-not-met', supplierIdsBelowMinimum),
  ];
}

function reopening({ depositHolders, quotes, todayOn, reason }: ReopeningFacts): Missing[] {
  return [
    ...listed('deposit-holder-not-told', householdIds(depositHolders.filter((holder) => !holder.isTold))),
    ...listed('quote-lapsed', lapsedQuoteIds(quotes, todayOn)),
    ...when(reason.trim() === '', { code: 'no-reason' }),
  ];
}

function ordering(facts: OrderingFacts): Missing[] {
  const unpaid = facts.deposits.filter(
    (deposit) => !deposit.isWaived && deposit.receivedMinorUnits < deposit.dueMinorUnits,
  );
  const unpaidMinorUnits = unpaid.reduce(
    (sum, deposit) => sum + deposit.dueMinorUnits - deposit.receivedMinorUnits,
    0,
  );
  return [
    ...when(!isApprovedByTwo(facts.approvals), { code: 'second-login-missing' }),
    ...listed('deposit-unpaid', householdIds(unpaid), { minorUnits: unpaidMinorUnits }),
    ...listed('quote-lapsed', lapsedQuoteIds(facts.quotes, facts.todayOn)),
    ...when(isPriceNowAbove(facts.estimatedMinorUnits, facts.repricedMinorUnits, facts.priceRisePercent), {
      code: 'price-risen',
      minorUnits: facts.repricedMinorUnits - facts.estimatedMinorUnits,
    }),
  ];
}

function landing({ lines, sizes }: LandingFacts): Missing[] {
  const unnumbered = sizes.filter((size) => size.countedBags > size.numberedBags);
  return [
    ...listed(
      'line-not-counted',
      lines.filter((line) => line.countedBags === null).map((line) => line.lineId),
    ),
    ...when(unnumbered.length > 0, {
      code: 'bag-not-numbered',
      count: sumOf(unnumbered.map((size) => size.countedBags - size.numberedBags)),
      ids: unnumbered.map((size) => size.bagOfferId),
    }),
  ];
}

function sharing({ bags, lines, lots }: SharingFacts): Missing[] {
  const open = lots
    .map((lot) => ({
      lotId: lot.lotId,
      grams: lot.landedGrams - lot.onHoldGrams - lot.sharedGrams - lot.commonGrams - lot.lostGrams,
    }))
    .filter((lot) => lot.grams !== 0);
  return [
    ...listed(
      'bag-not-weighed',
      bags.filter((bag) => !bag.isWeighedOrExempted).map((bag) => bag.bagId),
    ),
    ...listed(
      'line-not-split',
      lines.filter((line) => line.ruleName === null).map((line) => line.lineId),
    ),
    // Told lot by lot: what one lot lacks must not hide what another has too much.
    ...open.map((lot) => ({ code: 'mass-not-shared', ids: [lot.lotId], grams: lot.grams }) as const),
  ];
}

function closing(facts: ClosingFacts): Missing[] {
  return [
    ...listed('invoice-missing', facts.supplierIdsWithoutInvoice),
    ...listed('claim-open', facts.openClaimIds),
    ...clearingNotZero(facts.clearingMinorUnits),
    ...depositsHeld(facts.deposits),
    ...when(facts.unassignedGrams !== 0, { code: 'mass-unassigned', grams: facts.unassignedGrams }),
  ];
}

function callingOff(facts: CallingOffFacts, wasOrdered: boolean): Missing[] {
  return [
    ...depositsHeld(facts.deposits),
    ...clearingNotZero(facts.clearingMinorUnits),
    ...when(wasOrdered && !facts.isCancellationRecorded, { code: 'cancellation-not-recorded' }),
  ];
}

function clearingNotZero(clearingMinorUnits: number): Missing[] {
  return when(clearingMinorUnits !== 0, { code: 'clearing-not-zero', minorUnits: clearingMinorUnits });
}

function depositsHeld(deposits: ClosingFacts['deposits']): Missing[] {
  const held = deposits.filter((deposit) => deposit.heldMinorUnits !== 0);
  const heldMinorUnits = held.reduce((sum, deposit) => sum + deposit.heldMinorUnits, 0);
  return listed('deposit-held', householdIds(held), { minorUnits: heldMinorUnits });
}

function isApprovedByTwo(approvals: OrderingFacts['approvals']): boolean {
  const coordinators = approvals.filter((approval) => approval.duty === 'coordinator');
  const treasurers = approvals.filter((approval) => approval.duty === 'treasurer');
  return coordinators.some((coordinator) =>
    treasurers.some((treasurer) => treasurer.loginId !== coordinator.loginId),
  );
}

function lapsedQuoteIds(quotes: readonly QuoteFact[], todayOn: string): string[] {
  return quoteIds(quotes.filter((quote) => quote.validUntilOn < todayOn));
}

const quoteIds = (quotes: readonly QuoteFact[]) => quotes.map((quote) => quote.quoteId);
const pledgeIds = (rows: readonly { readonly pledgeId: string }[]) => rows.map((row) => row.pledgeId);
const householdIds = (rows: readonly { readonly householdId: string }[]) =>
  rows.map((row) => row.householdId);

function when(isMissing: boolean, missing: Missing): Missing[] {
  return isMissing ? [missing] : [];
}

function listed(code: MissingCode, ids: readonly string[], sums: { minorUnits?: number } = {}): Missing[] {
  return when(ids.length > 0, { code, count: ids.length, ids, ...sums });
}
