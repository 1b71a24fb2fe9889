import { LEAST_HOUSEHOLDS } from '@sheafbook/coverage';
import type { FillCertificate, UnitPrice } from '@sheafbook/sharing';
import type { Actor } from '../../platform/actor.ts';
import type { BasketAnswer, LineAnswer } from './answer.ts';
import { estimateOf, type FillEstimate } from './estimate.ts';
import { maySeeAllotments } from './policy.ts';
import type { PledgeOutcome } from './preview.ts';
import type { LineTips, TipAnswer } from './tipping.ts';
import type {
  AllotmentsView,
  FillView,
  FixingView,
  OutlookAnswer,
  PledgePreviewAnswer,
} from './use-cases.ts';
import type { PledgeEffectAnswer } from './use-cases-effect.ts';

/** The fill as this actor may see it: bags and prices are everybody's, what a household is promised its own. */
export function presentFill(view: FillView, actor: Actor) {
  const { buy, fill, estimates, isFixed } = view;
  return {
    buyId: buy.buyId,
    stage: buy.stage,
    isFixed,
    currency: actor.currency,
    goodsMinorUnits: estimates.goodsMinorUnits,
    freightMinorUnits: estimates.freightMinorUnits,
    levyMinorUnits: estimates.levyMinorUnits,
    totalMinorUnits: estimates.totalMinorUnits,
    baskets: fill.baskets.map((basket) => presentBasket(basket, actor)),
    lines: fill.lines.map((line) => presentLine(view, line, actor)),
    ownEstimateMinorUnits: actor.householdId === null ? null : estimateOf(view, actor.householdId),
  };
}

function presentBasket(basket: BasketAnswer, actor: Actor) {
  const { quoteId, supplierId, goodsMinorUnits, freightMinorUnits, grams, isBelowMinimum } = basket;
  const certificate = presentCertificate(basket.certificate, actor);
  return { quoteId, supplierId, goodsMinorUnits, freightMinorUnits, grams, isBelowMinimum, certificate };
}

/** Its levels and words count dropped pledges and what was wanted in all, which among few households says who. */
function presentCertificate(certificate: FillCertificate, actor: Actor) {
  const { method, countsTried, isProvenBest, note, levels } = certificate;
  return { method, countsTried, isProvenBest, ...(maySeeAllotments(actor) ? { note, levels } : {}) };
}

function presentLine(view: FillView, line: LineAnswer, actor: Actor) {
  const { lineId, quoteId, bags, commonUnits, commonGrams, goodsMinorUnits, landedPrice } = line;
  const tips = view.tips.find((known) => known.lineId === lineId);
  return {
    lineId,
    quoteId,
    bags: bags.map((bag) => ({
      bagOfferId: bag.bagOfferId,
      bags: bag.bags,
      goodsMinorUnits: bag.goodsMinorUnits,
    })),
    commonUnits,
    commonGrams,
    goodsMinorUnits,
    landedPrice: landedPrice && { minorUnits: landedPrice.minorUnits, grams: landedPrice.grams },
    tips: tips ? presentTips(view, tips, actor) : null,
    own: line.pledges.filter((pledge) => pledge.householdId === actor.householdId).map(presentPledge),
    ...(maySeeAllotments(actor) ? { pledges: line.pledges.map(presentPledge) } : {}),
  };
}

function presentPledge(pledge: LineAnswer['pledges'][number]) {
  const { pledgeId, householdId, units, grams, wholeBags, isSubstitute, dropped } = pledge;
  return { pledgeId, householdId, units, grams, wholeBags, isSubstitute, dropped };
}

/** What is wanted in all is shown over five households that the actor can't take off one by one. */
function presentTips({ inputs }: FillView, tips: LineTips, actor: Actor) {
  const pledging = inputs.pledges.filter((pledge) => pledge.lineId === tips.lineId);
  const others = new Set(pledging.map((pledge) => pledge.householdId));
  if (actor.householdId !== null) others.delete(actor.householdId);
  const unknown = actor.isHelping ? others.size - 1 : others.size;
  const isShown = maySeeAllotments(actor) || unknown >= LEAST_HOUSEHOLDS;
  return {
    wantedUnits: isShown ? tips.wantedUnits : null,
    toNextBagUnits: tips.toNextBagUnits,
    overLastBagUnits: tips.overLastBagUnits,
    isDeadZone: tips.isDeadZone,
    tip: tips.tip && presentTip(tips.tip, actor),
    freeTip: tips.freeTip && presentTip(tips.freeTip, actor),
  };
}

function presentTip(tip: TipAnswer, actor: Actor) {
  const ownSavings = tip.savings.filter((saving) => saving.ownerId === actor.householdId);
  return {
    bagOfferId: tip.bagOfferId,
    extraBags: tip.extraBags,
    extraUnits: tip.extraUnits,
    bags: tip.bags,
    reachesBreak: tip.reachesBreak,
    reachesFreeFreight: tip.reachesFreeFreight,
    extraCostMinorUnits: tip.extraCostMinorUnits,
    savedMinorUnits: tip.savedMinorUnits,
    ownSavedMinorUnits: ownSavings.reduce((sum, saving) => sum + saving.minorUnits, 0),
    ...(maySeeAllotments(actor) ? { savings: tip.savings.map((saving) => ({ ...saving })) } : {}),
  };
}

export function presentPreview(answer: PledgePreviewAnswer, actor: Actor) {
  const { buy, now, lineId, outcomes } = answer;
  const tips = now.tips.find((known) => known.lineId === outcomes.atFill.lineId);
  const line = now.fill.lines.find((known) => known.lineId === outcomes.atFill.lineId);
  const member = { ...actor, duties: new Set<never>() }; // the answer is for the household, whatever its duties
  return {
    buyId: buy.buyId,
    lineId,
    currency: actor.currency,
    landedPrice: line?.landedPrice ?? null,
    atFill: presentOutcome(outcomes.atFill),
    allAtLeast: presentOutcome(outcomes.allAtLeast),
    allAtMost: presentOutcome(outcomes.allAtMost),
    tips: tips ? presentTips(now, tips, member) : null,
  };
}

function presentOutcome({ lineId, units, grams, dropped, landedMinorUnits, buyMinorUnits }: PledgeOutcome) {
  return { lineId, units, grams, dropped, landedMinorUnits, buyMinorUnits };
}

export function presentOutlook({ buy, atFill, allAtLeast, allAtMost }: OutlookAnswer, actor: Actor) {
  return {
    buyId: buy.buyId,
    currency: actor.currency,
    atFill: presentWhole(atFill),
    allAtLeast: presentWhole(allAtLeast),
    allAtMost: presentWhole(allAtMost),
  };
}

/** A whole buy as one sum; `grams` are those of its whole bags. */
function presentWhole({ estimates, fill }: FillEstimate) {
  return {
    goodsMinorUnits: estimates.goodsMinorUnits,
    freightMinorUnits: estimates.freightMinorUnits,
    levyMinorUnits: estimates.levyMinorUnits,
    totalMinorUnits: estimates.totalMinorUnits,
    grams: fill.baskets.reduce((sum, basket) => sum + basket.grams, 0),
  };
}

export function presentPledgeEffect({ buyId, effect }: PledgeEffectAnswer, actor: Actor) {
  return {
    buyId,
    currency: actor.currency,
    effect: effect && {
      savedMinorUnits: effect.savedMinorUnits,
      freightSavedMinorUnits: effect.freightSavedMinorUnits,
      lines: effect.lines.map((line) => ({
        lineId: line.lineId,
        savedMinorUnits: line.savedMinorUnits,
        isBoughtOnlyWithIt: line.isBoughtOnlyWithIt,
        landedWithIt: presentPrice(line.landedWithIt),
        landedWithout: presentPrice(line.landedWithout),
      })),
    },
  };
}

const presentPrice = (price: UnitPrice | null) =>
  price && { minorUnits: price.minorUnits, grams: price.grams };

export function presentFixing(view: FixingView, actor: Actor) {
  return {
    ...presentFill(view, actor),
    missing: view.shown,
    dropped: view.dropped.map(({ householdId, pledgeId, lineId, reason, substituteLineId }) => ({
      householdId,
      pledgeId,
      lineId,
      reason,
      substituteLineId,
    })),
    warnings: view.warnings.map((warning) => ({ ...warning })),
  };
}

export function presentAllotments({ rows, commonOwnerId }: AllotmentsView) {
  return {
    allotments: rows.map((row) => ({
      lineId: row.buyLineId,
      ownerId: row.ownerId,
      isCommonStock: row.ownerId === commonOwnerId,
      grams: row.grams,
      units: row.units,
      wholeBags: row.wholeBags,
      isDropped: row.isDropped,
      droppedBecause: row.droppedBecause,
    })),
  };
}
