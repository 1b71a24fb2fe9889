import type { ContainerRow, PlaceRow } from '@sheafbook/db/tables';
import { eatFirstYears, type Help } from '@sheafbook/keeping';
import type { Keeping, Kept } from './kept.ts';
import type { ToldMove } from './queries.ts';
import type { HotPlace } from './use-cases-hot.ts';

export const presentPlaceOf = (place: PlaceRow | null) =>
  place && { id: place.placeId, name: place.name, kind: place.kind, isStores: place.householdId === null };

export const presentMoved = (moved: {
  containers: readonly ContainerRow[];
  place: PlaceRow | null;
  movedOn: string;
}) => ({
  movedOn: moved.movedOn,
  place: presentPlaceOf(moved.place),
  containers: moved.containers.map(({ containerId, containerCode }) => ({
    id: containerId,
    code: containerCode,
  })),
});

export const presentMoves = (moves: readonly ToldMove[]) => ({
  moves: moves.map(({ move, place, movedBy }) => ({
    id: move.containerMoveId,
    movedOn: move.movedOn,
    place: presentPlaceOf(place),
    toldTenths: move.toldTenths,
    movedBy,
    movedAt: move.movedAt.toISOString(),
  })),
});

/** How long a container keeps, no finer than it is known: days of a band, and the years that these end in. */
export function presentKeepingOf(keeping: Keeping | null, todayOn: string) {
  if (keeping === null) return null;
  const { life, dates } = keeping;
  const { soonest, likely, latest } = eatFirstYears(todayOn, life);
  return {
    lowDays: life.lowDays,
    likelyDays: life.likelyDays,
    pastDays: life.pastDays,
    isUnfit: life.reasons.includes('found-unfit'),
    highDays: life.highDays,
    eatFirstYear: likely,
    soonestYear: soonest,
    latestYear: latest,
    isEstimate: life.isEstimate,
    isOfferTime: dates.offerOn <= todayOn,
  };
}

export function presentKeeping({
  kept,
  helps,
  placeById,
  todayOn,
}: {
  kept: Kept;
  helps: readonly Help[];
  placeById: ReadonlyMap<string, PlaceRow>;
  todayOn: string;
}) {
  const { container, keeping } = kept;
  const placeOf = (placeId: string | null) => presentPlaceOf(placeById.get(placeId ?? '') ?? null);
  return {
    containerId: container.containerId,
    code: container.containerCode,
    grams: kept.grams,
    isHeld: kept.isHeld,
    place: presentPlaceOf(kept.place),
    keeping: presentKeepingOf(keeping, todayOn),
    why: keeping && {
      usedPart: keeping.life.usedPart,
      packClass: keeping.life.packClass,
      weakestLink: keeping.life.weakestLink,
      reasons: [...keeping.life.reasons],
      source: keeping.life.source,
    },
    stays: kept.stays.map((stay) => ({
      fromOn: stay.fromOn,
      toOn: stay.toOn,
      days: stay.days,
      place: placeOf(stay.placeId),
      steadyTenths: stay.steadyTenths,
      usedDays: Math.round(stay.usedDays),
      known: stay.known,
    })),
    helps: helps.map((help) => ({
      way: help.way,
      place: help.way === 'move' ? placeOf(help.placeId) : null,
      gainDays: help.gainDays,
    })),
  };
}

/** Days of life are as at 70 °F, and told whole: nobody knows them finer. */
export const presentHotPlaces = (rows: readonly HotPlace[]) => ({
  places: rows.map(({ season, place, cooler, startsOn, endsOn, standing, gains }) => ({
    place: presentPlaceOf(place),
    ...{ startsOn, endsOn, days: season.days, isMeasured: season.isMeasured },
    usedDays: Math.round(season.usedDays),
    lostDays: Math.round(season.lostDays),
    cooler: presentPlaceOf(cooler),
    standing,
    gains: gains.map(({ food, ...gain }) => ({
      food: { id: food.foodId, code: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs },
      ...gain,
    })),
  })),
});
