import {
  closeGapWhole,
  coverByFood,
  type FoodGroupCode,
  groupTotals,
  mayEat,
  type Pack,
  whyNotEat,
} from '@sheafbook/coverage';
import type { Tx } from '@sheafbook/db';
import type { FoodRow } from '@sheafbook/db/tables';
import { assert, ceilFraction, fraction, gramsOfPhysicalUnit, roundFraction } from '@sheafbook/units';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listBuyLines, loadBuy, requireStage } from '../buy/queries.ts';
import { loadContainer } from '../container/queries.ts';
import { estimateFill } from '../fill/use-cases.ts';
import { listFoodsById } from '../food/queries.ts';
import { loadKept } from '../keeping/use-cases.ts';
import { listRanBefore } from '../pour-log/queries.ts';
import { type LandedFood, landedFoods } from './landed.ts';
import {
  listAwardedAndFetched,
  listAwards,
  listCharges,
  listEatersOf,
  listHoldings,
  listPlansOf,
  listPresentHouseholdIds,
} from './queries.ts';
import { coverageInput, type HouseholdFacts, reckonCoverage, toFacts } from './reckon.ts';
import type { GapQuery } from './schema.ts';
import { sortStock } from './stock.ts';

export { type Eating, loadEating } from './eating.ts';

/** How long the household's own stock feeds its eaters, what runs out first, and what a day costs. */
export function readCoverage(context: Context) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const facts = await factsOf(tx, context, householdId);
    const landed = landedFoods(
      await listAwards(tx, storehouseId, householdId),
      await listCharges(tx, storehouseId, householdId),
    );
    await noteHelpersRead(tx, context, 'eaters, stock and days covered');
    const coverage = reckonCoverage(facts, todayOf(context));
    const byFood = coverByFood(coverage, coverageInput(facts, todayOf(context)));
    return { facts, landed, coverage, byFood };
  });
}

/**
 * The cheapest way to the household's target in an open buy within a budget, in whole steps of a share. A food counts
 * at what it would cost landed as the buy stands; one that some eater may not eat is left out, since the plan must hold
 * for everybody at the table.
 */
export function closeGapInBuy(context: Context, query: GapQuery) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(
    context,
    async (tx) => {
      const buy = await loadBuy(tx, storehouseId, query.buy);
      requireStage(buy, 'gathering');
      const facts = await factsOf(tx, context, householdId);
      const today = todayOf(context);
      const { targetDays } = coverageInput(facts, today, query.targetDays);
      const coverage = reckonCoverage(facts, today, query.targetDays);
      const targeted = coverage.groups.filter((group) => group.isTargeted);
      const offers = await listOffers(tx, context, query.buy);
      const edible = offers.filter(({ food }) => isForAll(food, facts));
      const packs = edible
        .filter(({ pack }) => targeted.some(({ group }) => group === pack.group))
        .map(({ pack }) => pack);
      await noteHelpersRead(tx, context, 'eaters, stock and days covered');
      const closing = closeGapWhole({
        groups: targeted,
        packs,
        budgetMinorUnits: query.budgetMinorUnits,
        targetDays,
      });
      return { closing, offers, edible, targetDays, daysNow: coverage.byMass };
    },
    { task: 'fill' },
  );
}

/** Sums over all households, held back below five (job map section 14). Each household is told that it was counted. */
export function readTotals(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const householdIds = await listPresentHouseholdIds(tx, storehouseId);
      const all = await loadFacts(tx, context, householdIds);
      const counted = [...all.values()]
        .map((facts) => reckonCoverage(facts, todayOf(context)))
        .filter(({ state }) => state === 'counted');
      const days = groupTotals(counted.map(({ wholeDays }) => wholeDays ?? 0));
      if (days.isShown)
        await notePrivateRead(tx, context, {
          householdIds,
          what: 'eaters and days covered, as part of a sum over all households',
          purpose: 'coverage totals',
        });
      return {
        days,
        eaters: groupTotals(counted.map((coverage) => coverage.eaters.length)),
        milliAdultEquivalents: groupTotals(
          counted.map(({ adultEquivalents: { numerator, denominator } }) =>
            Number(roundFraction(fraction(numerator * 1000n, denominator))),
          ),
        ),
      };
    },
    { task: 'coverage-totals' },
  );
}

async function factsOf(tx: Tx, context: Context, householdId: string): Promise<HouseholdFacts> {
  const facts = (await loadFacts(tx, context, [householdId])).get(householdId);
  assert(facts, 'facts were asked for this household');
  return facts;
}

async function loadFacts(
  tx: Tx,
  context: Context,
  householdIds: readonly string[],
): Promise<Map<string, HouseholdFacts>> {
  const { storehouseId } = context.actor;
  const eaters = await listEatersOf(tx, storehouseId, householdIds);
  const { plans, guidelines } = await listPlansOf(tx, storehouseId, householdIds);
  const holdings = await listHoldings(tx, storehouseId, householdIds);
  const moves = await listAwardedAndFetched(tx, storehouseId, householdIds);
  const daysLeftOf = await loadDaysLeft(tx, storehouseId, holdings, todayOf(context));
  return new Map(
    householdIds.map((householdId) => [
      householdId,
      {
        eaters: eaters.filter((eater) => eater.householdId === householdId),
        plan: plans.find((plan) => plan.householdId === householdId),
        guidelines: guidelines.filter((row) => row.householdId === householdId),
        stock: sortStock(householdId, holdings, { moves, daysLeftOf }),
      },
    ]),
  );
}

/** The days for which each container's food still counts: the likely ones, or the fewest where something is unknown. */
async function loadDaysLeft(
  tx: Tx,
  storehouseId: string,
  holdings: Awaited<ReturnType<typeof listHoldings>>,
  todayOn: string,
): Promise<Map<string, number>> {
  const containerIds = holdings.flatMap(({ vesselKind, vesselId }) =>
    vesselKind === 'container' && vesselId !== null ? vesselId : [],
  );
  const kept = await loadKept(tx, storehouseId, { containerIds }, todayOn);
  return new Map(
    kept.flatMap(({ container, keeping }) =>
      keeping === null ? [] : [[container.containerId, keeping.life.likelyDays]],
    ),
  );
}

const isForAll = (food: FoodRow, facts: HouseholdFacts): boolean =>
  facts.eaters.every((eater) => mayEat(toFacts(eater), traitsOf(food)));

/** One step of each line that has a price as the buy stands, rounded up to the cent so that no budget is broken. */
async function listOffers(tx: Tx, context: Context, buyId: string): Promise<{ food: FoodRow; pack: Pack }[]> {
  const { storehouseId } = context.actor;
  const lines = await listBuyLines(tx, storehouseId, buyId);
  const foods = await listFoodsById(
    tx,
    storehouseId,
    lines.map((line) => line.foodId),
  );
  const { fill } = await estimateFill(tx, context, buyId);
  return lines.flatMap((line) => {
    const food = foods.find((candidate) => candidate.foodId === line.foodId);
    const price = fill.lines.find((answer) => answer.lineId === line.buyLineId)?.landedPrice;
    if (!food || !price || price.grams === 0) return [];
    const grams = gramsOfPhysicalUnit(line.stepUnits, line.massUnit === 'kg' ? 'kg' : 'lb');
    const minorUnits = Number(ceilFraction(fraction(price.minorUnits * grams, price.grams)));
    const group = food.foodGroup as FoodGroupCode;
    return { food, pack: { packId: line.buyLineId, group, grams, minorUnits, mostPacks: null } };
  });
}

/** Who at a household's table may not eat a food, by name: nobody else's to read, so only for whoever acts for it. */
export async function listMayNotEat(
  tx: Tx,
  storehouseId: string,
  { householdId, foods }: { householdId: string; foods: readonly FoodRow[] },
): Promise<Map<string, string[]>> {
  const eaters = await listEatersOf(tx, storehouseId, [householdId]);
  return new Map(
    foods.map((food) => [
      food.foodId,
      eaters.filter((eater) => !mayEat(toFacts(eater), traitsOf(food))).map(({ name }) => name),
    ]),
  );
}

const traitsOf = (food: FoodRow) => ({
  ...{ foodCode: food.foodCode, allergens: food.allergens },
  gluten: food.gluten as 'yes' | 'no' | 'cross-contact',
});

/**
 * Who of one's own household may not eat what is in a container, and who should take care, since its line ran before it,
 * that day, what they may not eat. Whether the line was cleaned between is not known.
 */
export function readWhoMayNotEat(context: Context, containerId: string) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const { food } = await loadContainer(tx, storehouseId, { householdId, containerId });
    const ranBefore = await listRanBefore(tx, storehouseId, containerId);
    const eaters = await listEatersOf(tx, storehouseId, [householdId]);
    await noteHelpersRead(tx, context, 'who eats what');
    const judged = eaters.map((eater) => ({
      eater,
      whyNot: whyNotEat(toFacts(eater), traitsOf(food)),
      met: ranBefore.filter((other) => !mayEat(toFacts(eater), traitsOf(other))),
    }));
    return {
      mayNotEat: judged.flatMap(({ eater, whyNot }) => (whyNot ? [{ eater, whyNot }] : [])),
      mayHaveMet: judged.filter(({ whyNot, met }) => !whyNot && met.length > 0),
    };
  });
}
export type WhoMayNotEat = Awaited<ReturnType<typeof readWhoMayNotEat>>;

/** What a food cost a household landed, on the average over its buys; undefined when it bought none. */
export async function findLandedCost(
  tx: Tx,
  storehouseId: string,
  { householdId, foodId }: { householdId: string; foodId: string },
): Promise<LandedFood['cost'] | undefined> {
  const awards = await listAwards(tx, storehouseId, householdId);
  const landed = landedFoods(awards, await listCharges(tx, storehouseId, householdId));
  return landed.find(({ food }) => food.foodId === foodId)?.cost;
}
