import type { PlaceWarmthRow } from '@sheafbook/db/tables';
import { ageingRate, historyOf, type Stretch, tenthsThatAgeLike, usedDays } from '@sheafbook/keeping';
import { addDays, sumOf } from '@sheafbook/units';

/** The days behind today by which the days ahead are guessed: a whole year, so that summer and winter count alike. */
const LOOK_BACK_DAYS = 365;
const WARM_TENTHS = 240; // facts section 8: 24 °C or lower; common practice, no source

/** The history of a place over `[fromOn, toOn)`, each span by the steady warmth at which food ages as much. */
export const warmthOver = (rows: readonly PlaceWarmthRow[], fromOn: string, toOn: string): Stretch[] =>
  historyOf(
    rows.map((row) => ({ readOn: row.fromOn, tenthsCelsius: row.ageTenths })),
    fromOn,
    toOn,
  );

/** The steady warmth at which food ages as it did over a history of a day at least. */
export function steadyTenths(history: readonly Stretch[]): number {
  const days = sumOf(history.map((stretch) => stretch.days));
  return days === 0 ? 0 : tenthsThatAgeLike(usedDays(history) / days);
}

/** How warm a place is on the whole: as over the last year, with how many of those days somebody read. */
export function warmthNow(rows: readonly PlaceWarmthRow[], today: string) {
  const history = warmthOver(rows, addDays(today, -LOOK_BACK_DAYS), today);
  const daysKnownAs = (known: Stretch['known']) =>
    sumOf(history.filter((stretch) => stretch.known === known).map(({ days }) => days));
  const agesLikeTenths = steadyTenths(history);
  return {
    agesLikeTenths,
    /** How many times as fast as at 70 °F food ages there. */
    rate: ageingRate(agesLikeTenths),
    isWarm: agesLikeTenths > WARM_TENTHS,
    readDays: daysKnownAs('read'),
    gapDays: daysKnownAs('gap'),
    unknownDays: daysKnownAs('unknown'),
  };
}

/** The first day of the month after the one that begins on this day. */
export const monthAfter = (firstOn: string): string => `${addDays(firstOn, 31).slice(0, 7)}-01`;

type Month = { month: string; days: number; rows: PlaceWarmthRow[] };

/** What is known by the month: a typed figure, or what a logger's days come to. */
export function monthsOf(rows: readonly PlaceWarmthRow[]) {
  const months = new Map<string, Month>();
  for (const row of rows) {
    const month = row.fromOn.slice(0, 7);
    const known = months.get(month) ?? { month, days: 0, rows: [] };
    known.rows.push(row);
    months.set(month, known);
  }
  return [...months.values()].map(({ month, rows: own }) => ({
    month,
    isTyped: own.every(({ placeLogId }) => placeLogId === null),
    readDays: own.length,
    readings: sumOf(own.map(({ readings }) => readings)),
    agesLikeTenths: steadyTenths(
      own.map(({ ageTenths }) => ({ days: 1, tenthsCelsius: ageTenths, known: 'read' })),
    ),
    meanTenths: Math.round(sumOf(own.map(({ meanTenths }) => meanTenths)) / own.length),
    coldestTenths: Math.min(...own.map(({ coldestTenths }) => coldestTenths)),
    warmestTenths: Math.max(...own.map(({ warmestTenths }) => warmestTenths)),
  }));
}
