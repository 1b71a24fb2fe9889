import { assert } from '@sheafbook/units';
import { usedDays } from './ageing.ts';
import type { Stretch } from './place-history.ts';
import { warmSeasonOf } from './warm-season.ts';

/** About three months, as long as a summer. Units: days. Errors: none. Source: common practice, no source. */
export const SUMMER_DAYS = 92;

/** A place with how warm it was, all places over the same days. Units: none. Errors: none by itself. */
export type PlaceYear = { readonly placeId: string; readonly history: readonly Stretch[] };

/**
 * A place's warmest season, the life that it cost, and how much of that the coolest of the other places would have saved.
 * Units: whole days from the history's first day on; days of life at the reference temperature, `lostDays` never below 0.
 * Shape: `coolerPlaceId` null where no other measured place was cooler in that season.
 * Errors: none.
 */
export type HotSeason = {
  readonly placeId: string;
  readonly startsAfterDays: number;
  readonly days: number;
  readonly usedDays: number;
  readonly lostDays: number;
  readonly coolerPlaceId: string | null;
  readonly isMeasured: boolean;
};

/**
 * What the last summer cost in each place: the warmest so many days in a row of its own history, against the same days in
 * the coolest other place that was measured through them. Most lost first.
 * Units: as `HotSeason`. Shape: histories in the order of time, of equally many days. Ties: by place id.
 * Errors: AssertionError when histories are of different lengths or `days` is not whole and above zero.
 */
export function hotSeasons(places: readonly PlaceYear[], days: number = SUMMER_DAYS): HotSeason[] {
  const lengths = new Set(places.map(({ history }) => history.reduce((sum, part) => sum + part.days, 0)));
  assert(lengths.size <= 1, 'all places are told of over the same days');
  return places
    .map((place) => hotSeasonOf(place, places, days))
    .toSorted((a, b) => b.lostDays - a.lostDays || (a.placeId < b.placeId ? -1 : 1));
}

function hotSeasonOf(place: PlaceYear, places: readonly PlaceYear[], most: number): HotSeason {
  const { startsAfterDays, days, usedDays: used } = warmSeasonOf(place.history, most);
  const season = { startsAfterDays, days };
  const [coolest] = places
    .filter(({ placeId }) => placeId !== place.placeId)
    .map(({ placeId, history }) => ({ placeId, part: partOf(history, season) }))
    .filter(({ part }) => isMeasured(part))
    .map(({ placeId, part }) => ({ placeId, used: usedDays(part) }))
    .toSorted((a, b) => a.used - b.used || (a.placeId < b.placeId ? -1 : 1));
  const isCooler = coolest !== undefined && coolest.used < used;
  return {
    ...{ placeId: place.placeId, startsAfterDays, days, usedDays: used },
    lostDays: isCooler ? used - coolest.used : 0,
    coolerPlaceId: isCooler ? coolest.placeId : null,
    isMeasured: isMeasured(partOf(place.history, season)),
  };
}

const isMeasured = (part: readonly Stretch[]) =>
  part.length > 0 && part.every(({ known }) => known !== 'unknown');

/** The stretches of some days of a history, cut where they begin and end. */
function partOf(
  history: readonly Stretch[],
  { startsAfterDays, days }: { startsAfterDays: number; days: number },
): Stretch[] {
  let at = 0;
  return history.flatMap((stretch) => {
    const from = Math.max(at, startsAfterDays);
    const to = Math.min(at + stretch.days, startsAfterDays + days);
    at += stretch.days;
    return from < to ? [{ ...stretch, days: to - from }] : [];
  });
}
