import type { FoodRow, PlaceRow } from '@sheafbook/db/tables';
import { type PlannedOutcome, sumRisk } from '@sheafbook/keeping';
import { sumOf } from '@sheafbook/units';
import type { PostedEntry } from '../../platform/post-entry.ts';
import type { Shelved } from '../container/queries.ts';
import type { Queued, Rotation } from './reckon.ts';
import type { RotationItem } from './stock.ts';

type Answer = {
  readonly items: readonly RotationItem[];
  readonly rotation: Rotation;
  readonly whatIf: { readonly outcomes: readonly PlannedOutcome[]; readonly givenGrams: number } | null;
};
/** A month as people reckon a steady pace. */
const MONTH_DAYS = 30;

const SHOWN_FIRST = 100;

/** `faster` are the grams a day that the steady pace is above the one at which a food is eaten; below zero there is time. */
export function presentRotation({ items, rotation, whatIf }: Answer, of: 'first' | 'whole' = 'first') {
  const foodOf = new Map(items.map(({ food }) => [food.foodCode, presentFood(food)]));
  const named = <Row extends { foodCode: string }>({ foodCode, ...row }: Row) => ({
    ...row,
    food: foodOf.get(foodCode) ?? null,
  });
  return {
    queued: rotation.queue.length,
    queue: (of === 'whole' ? rotation.queue : rotation.queue.slice(0, SHOWN_FIRST)).map(presentQueued),
    foods: rotation.foods.map(named).map(({ gramsPerDay, steadyGramsPerDay, ...food }) => ({
      ...food,
      eatenAMonthGrams: Math.round(gramsPerDay * MONTH_DAYS),
      steadyAMonthGrams: steadyGramsPerDay * MONTH_DAYS,
    })),
    risk: presentRisk(rotation.outcomes, items, named),
    leaveShut: rotation.shut.map(({ item, because, inPlaceOf, costsDays }) => ({
      container: presentQueued(item),
      inPlaceOf: presentQueued(inPlaceOf),
      ...{ because, costsDays },
    })),
    held: rotation.held.map(presentItem),
    unfit: rotation.unfit.map(presentItem),
    untold: rotation.untold.map(presentItem),
    whatIf: whatIf && {
      ...presentRisk(whatIf.outcomes, items, named),
      givenGrams: whatIf.givenGrams,
      savedGrams: riskIn(rotation.outcomes) - riskIn(whatIf.outcomes),
    },
  };
}

const riskIn = (outcomes: readonly PlannedOutcome[]) => sumOf(outcomes.map(({ atRiskGrams }) => atRiskGrams));

function presentRisk<Named>(
  outcomes: readonly PlannedOutcome[],
  items: readonly RotationItem[],
  named: (row: { foodCode: string; atRiskGrams: number }) => Named,
) {
  const placeOf = new Map(items.flatMap(({ place }) => (place === null ? [] : [[place.placeId, place]])));
  const sums = (by: 'month' | 'placeKey') =>
    sumRisk(outcomes, by).map(({ key, atRiskGrams, foods }) => ({
      key,
      ...{ atRiskGrams, foods: foods.map(named) },
    }));
  return {
    grams: riskIn(outcomes),
    byMonth: sums('month').map(({ key, ...sum }) => ({ month: key, ...sum })),
    byPlace: sums('placeKey').map(({ key, ...sum }) => ({
      place: presentPlace(placeOf.get(key) ?? null),
      ...sum,
    })),
    byFood: sumRisk(outcomes, 'foodCode').map(({ key, atRiskGrams }) =>
      named({ foodCode: key, atRiskGrams }),
    ),
  };
}

const presentQueued = (item: Queued) => ({
  ...presentItem(item),
  atRiskGrams: item.atRiskGrams,
  isAnEatersOnlyStock: item.isAnEatersOnlyStock,
});

/** Days are as many as they are reckoned to be, and no finer than a year where they are printed. */
const presentItem = ({ container, kind, food, place, life, dates, ...item }: RotationItem) => ({
  container: container && { id: container.containerId, code: container.containerCode },
  lotId: item.lotId,
  kind: kind && { code: kind.kindCode, nameEn: kind.nameEn, nameEs: kind.nameEs },
  food: presentFood(food),
  place: presentPlace(place),
  ...{ grams: item.grams, isOpen: item.isOpen, packedOn: item.packedOn },
  daysLeft: life?.likelyDays ?? null,
  pastDays: life?.pastDays ?? 0,
  isEstimate: life?.isEstimate ?? true,
  eatFirstOn: dates?.eatFirstOn ?? null,
});

const presentPlace = (place: PlaceRow | null) => place && { id: place.placeId, name: place.name };

const presentFood = ({ foodId, foodCode, nameEn, nameEs }: FoodRow) => ({
  ...{ id: foodId, code: foodCode, nameEn, nameEs },
});

export function presentTaken({
  entry,
  takenGrams,
  container: { container, food, grams },
  next,
  earlier,
}: {
  entry: PostedEntry;
  takenGrams: number;
  container: Shelved;
  next: Queued | null;
  earlier: Queued | null;
}) {
  return {
    entryId: entry.entryId,
    entryNo: entry.entryNo,
    takenGrams,
    food: presentFood(food),
    container: {
      ...{ id: container.containerId, code: container.containerCode, lotId: container.lotId },
      ...{ openedOn: container.openedOn, grams },
    },
    next: next && presentQueued(next),
    earlier: earlier && presentQueued(earlier),
  };
}
