import type { FoodRow, PlaceRow } from '@sheafbook/db/tables';
import { type HotSeason, hotSeasons, whatHelps } from '@sheafbook/keeping';
import { addDays } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { todayOf } from '../../platform/today.ts';
import { whoseStock } from '../../platform/whose-stock.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listPlaces, listWarmth } from '../place/queries.ts';
import { warmthNow, warmthOver } from '../place/use-cases.ts';
import { type Kept, loadKept } from './kept.ts';
import { mayMoveCommonStock } from './policy.ts';
import type { HotPlacesQuery } from './schema.ts';

const YEAR_DAYS = 365;

/** What moving would give back to the containers of one food in a place: to the least and to the most of them. */
export type Gain = {
  readonly food: FoodRow;
  readonly count: number;
  readonly grams: number;
  readonly leastDays: number;
  readonly mostDays: number;
};
export type HotPlace = {
  readonly season: HotSeason;
  readonly startsOn: string;
  readonly endsOn: string;
  readonly place: PlaceRow;
  readonly cooler: PlaceRow | null;
  readonly standing: { readonly count: number; readonly grams: number };
  readonly gains: readonly Gain[];
};

/** What the warmest season of the last year cost food in each place, and what moving it to the coolest would give back. */
export function readHotPlaces(context: Context, { of }: HotPlacesQuery) {
  const { storehouseId } = context.actor;
  const todayOn = todayOf(context);
  const fromOn = addDays(todayOn, -YEAR_DAYS);
  return withTx(context, async (tx) => {
    const householdId = whoseStock(context, of, mayMoveCommonStock);
    if (householdId !== null) await noteHelpersRead(tx, context, 'places and what stands in them');
    const places = (await listPlaces(tx, storehouseId, householdId)).filter(
      (place) => place.householdId === householdId,
    );
    const rows = await listWarmth(
      tx,
      storehouseId,
      places.map(({ placeId }) => placeId),
    );
    const rowsOf = (placeId: string) => rows.filter((row) => row.placeId === placeId);
    const kept = await loadKept(tx, storehouseId, { householdId }, todayOn);
    const seasons = hotSeasons(
      places.map(({ placeId }) => ({ placeId, history: warmthOver(rowsOf(placeId), fromOn, todayOn) })),
    );
    const placeOf = (placeId: string | null) => places.find((place) => place.placeId === placeId);
    return seasons.flatMap((season): HotPlace[] => {
      const place = placeOf(season.placeId);
      if (!place) return [];
      const cooler = placeOf(season.coolerPlaceId) ?? null;
      const here = kept.filter((row) => row.place?.placeId === place.placeId);
      const to = cooler && {
        ...{ placeId: cooler.placeId, isLit: cooler.isLit },
        tenthsCelsius: warmthNow(rowsOf(cooler.placeId), todayOn).agesLikeTenths,
      };
      const startsOn = addDays(fromOn, season.startsAfterDays);
      return [
        {
          ...{ season, place, cooler, startsOn, endsOn: addDays(startsOn, Math.max(0, season.days - 1)) },
          standing: { count: here.length, grams: gramsOf(here) },
          gains: to === null ? [] : gainsOf(here, to),
        },
      ];
    });
  });
}

const gramsOf = (rows: readonly Kept[]) => rows.reduce((sum, { grams }) => sum + grams, 0);

type Target = { readonly placeId: string; readonly isLit: boolean | null; readonly tenthsCelsius: number };

function gainsOf(here: readonly Kept[], to: Target): Gain[] {
  const gained = here.flatMap((row) => {
    const days = row.keeping === null ? 0 : gainOf(row, to);
    return days > 0 ? [{ row, days }] : [];
  });
  const foods = [...new Map(gained.map(({ row }) => [row.food.foodId, row.food])).values()];
  return foods
    .map((food) => {
      const own = gained.filter(({ row }) => row.food.foodId === food.foodId);
      const days = own.map((one) => one.days);
      return {
        ...{ food, count: own.length, grams: gramsOf(own.map(({ row }) => row)) },
        ...{ leastDays: Math.min(...days), mostDays: Math.max(...days) },
      };
    })
    .toSorted((a, b) => b.mostDays - a.mostDays || (a.food.foodCode < b.food.foodCode ? -1 : 1));
}

function gainOf({ keeping, food, grams }: Kept, to: Target): number {
  if (keeping === null) return 0;
  const helps = whatHelps(keeping.input, { grams, needsMoistureTest: food.needsMoistureTest }, [to]);
  return helps.find(({ way }) => way === 'move')?.gainDays ?? 0;
}
