import type { BuyLineRow, BuyRow, FoodRow, StageMoveRow } from '@sheafbook/db/tables';
import type { BuyStage, Missing } from '@sheafbook/ledger';
import type { Actor } from '../../platform/actor.ts';
import type { PledgedSum } from '../pledge/use-cases.ts';
import { presentMissing } from './missing.ts';

export function presentBuy(buy: BuyRow) {
  return {
    id: buy.buyId,
    name: buy.name,
    stage: buy.stage,
    gatheringClosesAt: buy.gatheringClosesAt.toISOString(),
    orderOn: buy.orderOn,
    landingOn: buy.landingOn,
    landingPlace: buy.landingPlace,
    rulesVersion: buy.rulesVersion,
    madeAt: buy.madeAt.toISOString(),
    version: buy.version,
  };
}

export function presentBuys(page: { rows: readonly BuyRow[]; next: string | null }) {
  return { buys: page.rows.map(presentBuy), next: page.next };
}

export type LineOnPage = { readonly line: BuyLineRow; readonly food: FoodRow; readonly pledged: PledgedSum };
export type NextStep = { readonly to: BuyStage; readonly missing: readonly Missing[] | null };
export type BuyPage = {
  readonly buy: BuyRow;
  readonly lines: readonly LineOnPage[];
  readonly quotes: { readonly standing: number; readonly withdrawnOrLapsed: number };
  readonly next: NextStep | null;
};

/** One page of where a buy stands. */
export function presentBuyPage({ buy, lines, quotes, next }: BuyPage, actor: Actor) {
  return {
    ...presentBuy(buy),
    lines: lines.map(presentLine),
    quotes: { standing: quotes.standing, withdrawnOrLapsed: quotes.withdrawnOrLapsed },
    next: next && {
      to: next.to,
      missing: next.missing && presentMissing(next.missing, actor),
    },
  };
}

function presentLine({ line, food, pledged }: LineOnPage) {
  return {
    id: line.buyLineId,
    food: { id: food.foodId, foodCode: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs },
    massUnit: line.massUnit,
    stepUnits: line.stepUnits,
    splitRule: line.splitRule,
    commonCapGrams: line.commonCapGrams,
    quoteId: line.quoteId,
    version: line.version,
    pledged: presentPledged(pledged),
  };
}

/** Held back where fewer than five other households stand behind it. */
function presentPledged(sum: PledgedSum) {
  if (!sum.isShown) return { isShown: false as const };
  const { households, leastGrams, wantedGrams, mostGrams } = sum;
  return { isShown: true as const, households, leastGrams, wantedGrams, mostGrams };
}

export function presentStageMoves(moves: readonly StageMoveRow[]) {
  return {
    moves: moves.map((move) => ({
      from: move.fromStage,
      to: move.toStage,
      reason: move.reason,
      personId: move.personId,
      movedAt: move.movedAt.toISOString(),
    })),
  };
}
