import type { PlaceRow, PlaceWarmthRow } from '@sheafbook/db/tables';
import type { LoggerFile } from '@sheafbook/keeping';
import type { ListedLog } from './queries.ts';
import { monthsOf, type warmthNow } from './record.ts';

export type PlaceNow = { readonly place: PlaceRow; readonly warmth: ReturnType<typeof warmthNow> };

export const presentPlace = ({ place, warmth }: PlaceNow) => ({
  id: place.placeId,
  isStores: place.householdId === null,
  name: place.name,
  kind: place.kind,
  isLit: place.isLit,
  isDamp: place.isDamp,
  isRodentProof: place.isRodentProof,
  mostGrams: place.mostGrams,
  version: place.version,
  warmth: {
    agesLikeTenths: warmth.agesLikeTenths,
    isWarm: warmth.isWarm,
    readDays: warmth.readDays,
    gapDays: warmth.gapDays,
    unknownDays: warmth.unknownDays,
  },
});

export const presentPlaces = (rows: readonly PlaceNow[]) => ({ places: rows.map(presentPlace) });

type PlaceRecord = PlaceNow & {
  /** The food that stands in it; null for who does not keep it. */
  readonly loadGrams: number | null;
  readonly rows: readonly PlaceWarmthRow[];
  readonly logs: readonly ListedLog[];
};

export function presentPlaceRecord({ logs, rows, loadGrams, ...now }: PlaceRecord) {
  return {
    ...presentPlace(now),
    loadGrams,
    months: monthsOf(rows).map(presentMonth),
    logs: logs.map(presentLog),
  };
}

const presentMonth = (month: ReturnType<typeof monthsOf>[number]) => ({
  month: month.month,
  isTyped: month.isTyped,
  readDays: month.readDays,
  readings: month.readings,
  agesLikeTenths: month.agesLikeTenths,
  meanTenths: month.meanTenths,
  coldestTenths: month.coldestTenths,
  warmestTenths: month.warmestTenths,
});

const presentLog = ({ log, takenBy }: ListedLog) => ({
  id: log.placeLogId,
  fileName: log.fileName,
  firstOn: log.firstOn,
  lastOn: log.lastOn,
  readings: log.readings,
  badLines: log.badLines,
  takenBy,
  takenAt: log.takenAt.toISOString(),
});

/** What a file would bring; `next` is the line after which the next page of bad lines begins. */
export function presentPreview(file: LoggerFile, takenDays: readonly string[]) {
  const last = file.badLines.at(-1)?.line;
  const temperatures = file.days.map(({ meanTenths }) => meanTenths);
  return {
    readings: file.readings,
    days: file.days.length,
    firstOn: file.days[0]?.onDay ?? null,
    lastOn: file.days.at(-1)?.onDay ?? null,
    coldestTenths: temperatures.length === 0 ? null : Math.min(...file.days.map((day) => day.coldestTenths)),
    warmestTenths: temperatures.length === 0 ? null : Math.max(...file.days.map((day) => day.warmestTenths)),
    badCount: file.badCount,
    badLines: file.badLines.map(({ line, fault, text }) => ({ line, fault, text })),
    next: last ?? null,
    takenDays: [...takenDays],
  };
}
