import type { StockLot } from '@sheafbook/coverage';
import type { FoodRow } from '@sheafbook/db/tables';
import type { FoodGroup } from '@sheafbook/foods';
import type { listAwardedAndFetched, listHoldings } from './queries.ts';

type Holding = Awaited<ReturnType<typeof listHoldings>>[number];
type Moves = Awaited<ReturnType<typeof listAwardedAndFetched>>;

/** What a household can eat from now, what still waits for it at the storehouse, and what a hold keeps shut. */
export type HouseholdStock = {
  readonly atHome: readonly StockLot[];
  readonly coming: readonly { readonly food: FoodRow; readonly grams: number }[];
  readonly held: readonly { readonly food: FoodRow; readonly grams: number }[];
  /** Foods whose energy nobody has typed in: they count by mass and not by energy. */
  readonly withoutEnergy: readonly FoodRow[];
};

/**
 * Sorts a household's grams. Place is no dimension of an account, so a bag's grams are at home as far as they were
 * fetched: of the grams still in it, those awarded and not fetched are coming. `daysLeftOf` is by container.
 */
export function sortStock(
  householdId: string,
  holdings: readonly Holding[],
  { moves, daysLeftOf }: { moves: Moves; daysLeftOf: ReadonlyMap<string, number> },
): HouseholdStock {
  const own = holdings.filter((holding) => holding.householdId === householdId);
  const free = own.filter((holding) => !holding.isHeld);
  const parts = free.map((holding) => {
    const comingGrams = comingOf(householdId, holding, moves);
    return { holding, comingGrams, homeGrams: holding.grams - comingGrams };
  });
  return {
    atHome: parts.flatMap(({ holding, homeGrams }) =>
      homeGrams > 0 ? toStockLot(holding, homeGrams, daysLeftOf.get(holding.vesselId ?? '') ?? null) : [],
    ),
    coming: parts.flatMap(({ holding, comingGrams }) =>
      comingGrams > 0 ? { food: holding.food, grams: comingGrams } : [],
    ),
    held: own.filter((holding) => holding.isHeld).map(({ food, grams }) => ({ food, grams })),
    withoutEnergy: foodsOnce(
      free.map(({ food }) => food).filter((food) => food.kilocaloriesPer100Grams === null),
    ),
  };
}

function comingOf(householdId: string, holding: Holding, { awarded, fetched }: Moves): number {
  if (holding.vesselKind !== 'bag') return 0;
  const gramsOf = (rows: readonly { householdId: string; bagId: string; grams: number }[]) =>
    rows.find((row) => row.householdId === householdId && row.bagId === holding.vesselId)?.grams ?? 0;
  return Math.max(0, Math.min(holding.grams, gramsOf(awarded) - gramsOf(fetched)));
}

/** A container's food counts until it wants eating; a bag's, and what nobody said how it keeps, for good. */
function toStockLot({ vesselId, lotId, food }: Holding, grams: number, daysLeft: number | null): StockLot {
  return {
    lotId: `${vesselId} ${lotId}`, // a kitchen holds several lots
    foodCode: food.foodCode,
    group: food.foodGroup as FoodGroup,
    grams,
    daysLeft,
    allergens: food.allergens,
    gluten: food.gluten as StockLot['gluten'],
    kilocaloriesPer100Grams: food.kilocaloriesPer100Grams ?? 0,
  };
}

const foodsOnce = (foods: readonly FoodRow[]): FoodRow[] => [
  ...new Map(foods.map((food) => [food.foodId, food])).values(),
];
