import { eatingPace, onlyFoods, type StockFood } from '@sheafbook/coverage';
import type { FoodGroup } from '@sheafbook/foods';
import {
  eatFaster,
  type FoodPace,
  foodPaces,
  giveUnbegun,
  type KeptLot,
  type LeftShut,
  leaveShut,
  moveWhereItHelps,
  type Pace,
  type PlannedLot,
  type PlannedOutcome,
  planRotation,
  repackWhereItHelps,
  rotationQueue,
  storeQueue,
} from '@sheafbook/keeping';
import { fractionToNumber, sumOf } from '@sheafbook/units';
import type { Eating } from '../coverage/use-cases.ts';
import { openedDaysIn, type RotationItem } from './stock.ts';

/** What nobody has said how it keeps is eaten after all that has a day: 30 years, the longest that is ever shown. */
const UNTOLD_DAYS = 10_957;

export type Queued = RotationItem & {
  readonly daysLeft: number;
  readonly atRiskGrams: number;
  readonly isAnEatersOnlyStock: boolean;
  readonly foodCode: string;
  readonly openedDays: number;
};

export type Rotation = {
  readonly pace: Pace;
  readonly queue: readonly Queued[];
  readonly held: readonly RotationItem[];
  /** What its last look left for nobody's table, on hold or not: it is in no queue, and is named instead. */
  readonly unfit: readonly RotationItem[];
  /** Those of which nobody has said how they keep: they are eaten, and in no sum of what is at risk. */
  readonly untold: readonly RotationItem[];
  readonly foods: readonly FoodPace[];
  readonly outcomes: readonly PlannedOutcome[];
  readonly shut: readonly LeftShut<Queued>[];
};

/** How fast a household eats what it has, food by food, in grams a day. */
function paceOf(eating: Eating, items: readonly RotationItem[]): Pace {
  const pace = eatingPace(eating.needs, { eaters: eating.eaters, stock: items.map(toStockFood) });
  return new Map([...pace].map(([foodCode, perDay]) => [foodCode, fractionToNumber(perDay)]));
}

/** The whole answer for a household: what next, how fast, what is not eaten in time, and what to leave shut. */
export function reckonRotation(
  items: readonly RotationItem[],
  { eating, todayOn }: { eating: Eating; todayOn: string },
): Rotation {
  const { free, ...kept } = byHold(items);
  const only = onlyFoods(eating.eaters, free.map(toStockFood));
  const plan = planOf(free, { pace: paceOf(eating, free), todayOn });
  const queue = rotationQueue(toQueued(free, plan.outcomes, only));
  return { ...plan, ...kept, queue, shut: leaveShut(queue) };
}

/** Of common stock nobody eats: all of it is at risk until it is given, and the queue is what to give next. */
export function reckonStoreRotation(items: readonly RotationItem[], todayOn: string): Rotation {
  const { free, ...kept } = byHold(items);
  const plan = planOf(free, { pace: new Map(), todayOn });
  const queued = toQueued(free, plan.outcomes, new Set()).flatMap((item) =>
    item.dates === null ? [] : [{ ...item, ...item.dates }],
  );
  return { ...plan, ...kept, queue: storeQueue(queued, todayOn), shut: [] };
}

const byHold = (items: readonly RotationItem[]) => ({
  free: items.filter(({ isOnHold, isUnfit }) => !isOnHold && !isUnfit),
  held: items.filter(({ isOnHold }) => isOnHold),
  unfit: items.filter(({ isUnfit }) => isUnfit),
});

function planOf(free: readonly RotationItem[], { pace, todayOn }: { pace: Pace; todayOn: string }) {
  const lots = free.flatMap((item) => toPlanned(item) ?? []);
  return {
    pace,
    untold: free.filter(({ life }) => life === null),
    foods: foodPaces(lots, pace),
    outcomes: planRotation(lots, { pace, todayOn }),
  };
}

function toQueued(
  items: readonly RotationItem[],
  outcomes: readonly PlannedOutcome[],
  only: ReadonlySet<string>,
): Queued[] {
  const riskOf = new Map(outcomes.map(({ code, atRiskGrams }) => [code, atRiskGrams]));
  return items.map((item) => ({
    ...item,
    daysLeft: item.life?.likelyDays ?? UNTOLD_DAYS,
    atRiskGrams: riskOf.get(item.code) ?? 0,
    isAnEatersOnlyStock: only.has(item.food.foodCode),
    foodCode: item.food.foodCode,
    openedDays: openedDaysIn(item) ?? UNTOLD_DAYS,
  }));
}

/** What is asked: see `whatIfQuery`. Where to move to comes with how warm it is there. */
export type Wished = {
  readonly eatPercent: number;
  readonly moveTo: { placeKey: string; tenthsCelsius: number; isLit: boolean | null } | null;
  readonly repack: boolean;
  readonly give: boolean;
};

/** The same stock if some of it were kept, eaten or given otherwise. First it is packed anew and moved, then eaten, then given. */
export function reckonWhatIf(
  items: readonly RotationItem[],
  { wished, pace, todayOn }: { wished: Wished; pace: Pace; todayOn: string },
) {
  const { free } = byHold(items);
  const kept = free.flatMap((item) => toKeptLot(item) ?? []);
  const loose = free.filter(({ input }) => input === null).flatMap((item) => toPlanned(item) ?? []);
  const packed = wished.repack ? repackWhereItHelps(kept) : kept;
  const moved = wished.moveTo === null ? packed : moveWhereItHelps(packed, wished.moveTo);
  const lots: PlannedLot[] = [...loose, ...moved];
  const faster = eatFaster(pace, wished.eatPercent);
  const outcomes = planRotation(lots, { pace: faster, todayOn });
  if (!wished.give) return { outcomes, givenGrams: 0 };
  const { kept: left, given } = giveUnbegun(lots, outcomes);
  return {
    outcomes: planRotation(left, { pace: faster, todayOn }),
    givenGrams: sumOf(given.map(({ grams }) => grams)),
  };
}

function toPlanned({ code, food, place, grams, life }: RotationItem): PlannedLot | null {
  if (life === null) return null;
  return {
    ...{ code, foodCode: food.foodCode, placeKey: place?.placeId ?? '', grams, daysLeft: life.likelyDays },
  };
}

function toKeptLot(item: RotationItem): KeptLot | null {
  const planned = toPlanned(item);
  if (planned === null || item.input === null) return null;
  return { ...planned, kept: item.input, needsMoistureTest: item.food.needsMoistureTest };
}

const toStockFood = ({ food, grams }: RotationItem): StockFood => ({
  foodCode: food.foodCode,
  group: food.foodGroup as FoodGroup,
  grams,
  allergens: food.allergens,
  gluten: food.gluten as StockFood['gluten'],
});
