import { costPerDay, costPerLoaf, costPerServing, type LandedCost } from '@sheafbook/coverage';
import type { FoodRow } from '@sheafbook/db/tables';
import { splitByWeight } from '@sheafbook/sharing';
import { type Fraction, fraction, sumOf } from '@sheafbook/units';
import type { listAwards, listCharges } from './queries.ts';

type Award = Awaited<ReturnType<typeof listAwards>>[number];
type Charge = Awaited<ReturnType<typeof listCharges>>[number];

/** What a food cost a household, landed, over all its buys, and what that comes to at the table. */
export type LandedFood = {
  readonly food: FoodRow;
  readonly cost: LandedCost;
  readonly perServing: Fraction;
  /** Only what bakes bread: any wheat. */
  readonly perLoaf: Fraction | null;
};

/**
 * Goods shares belong to their food; what a buy charged beside them (freight, levy) goes over the household's own
 * foods of that buy by mass, to the cent.
 */
export function landedFoods(awards: readonly Award[], charges: readonly Charge[]): LandedFood[] {
  const byFood = new Map<string, { food: FoodRow; minorUnits: number; grams: number }>();
  for (const buyId of new Set(awards.map((award) => award.buyId))) {
    const lines = awards.filter((award) => award.buyId === buyId && award.grams > 0);
    const own = charges.filter((charge) => charge.buyId === buyId);
    if (lines.length === 0 || own.length === 0) continue;
    const lineIds = new Set(lines.map((line) => line.buyLineId));
    const others = own.filter(({ buyLineId }) => buyLineId === null || !lineIds.has(buyLineId));
    const shared = splitByWeight(
      sumOf(others.map(({ minorUnits }) => minorUnits)),
      lines.map(({ grams }) => grams),
    );
    for (const [position, line] of lines.entries()) {
      const goods = sumOf(
        own.filter(({ buyLineId }) => buyLineId === line.buyLineId).map(({ minorUnits }) => minorUnits),
      );
      const before = byFood.get(line.food.foodId) ?? { food: line.food, minorUnits: 0, grams: 0 };
      byFood.set(line.food.foodId, {
        food: line.food,
        minorUnits: before.minorUnits + goods + (shared[position] ?? 0),
        grams: before.grams + line.grams,
      });
    }
  }
  return [...byFood.values()].map(({ food, minorUnits, grams }) => {
    const cost = { minorUnits, grams };
    const isWheat = food.allergens.includes('wheat') && food.keepingClass?.startsWith('whole-grain') === true;
    return { food, cost, perServing: costPerServing(cost), perLoaf: isWheat ? costPerLoaf(cost) : null };
  });
}

/** What a day of a group costs at what the household's foods of that group cost on the whole; null when none did. */
export function groupCostPerDay(
  group: string,
  needGramsPerDay: Fraction,
  landed: readonly LandedFood[],
): Fraction | null {
  const own = landed.filter(({ food }) => food.foodGroup === group);
  if (own.length === 0) return null;
  const cost = {
    minorUnits: sumOf(own.map(({ cost: { minorUnits } }) => minorUnits)),
    grams: sumOf(own.map(({ cost: { grams } }) => grams)),
  };
  return cost.grams === 0 ? fraction(0) : costPerDay(cost, needGramsPerDay);
}
