import type { Tx } from '@sheafbook/db';
import type { ContainerMoveRow, PlaceRow, PlaceWarmthRow } from '@sheafbook/db/tables';
import { readKeepingClass } from '@sheafbook/foods';
import {
  type HowKnown,
  type KeepingLife,
  type KeptContainer,
  keepingLifeOf,
  readBarrier,
  readTreatment,
  type Stretch,
  type ThreeDates,
  threeDates,
  UNKNOWN_TENTHS_CELSIUS,
  usedDays,
} from '@sheafbook/keeping';
import { daysBetween } from '@sheafbook/units';
import { listWarmth } from '../place/queries.ts';
import { steadyTenths, warmthNow, warmthOver } from '../place/use-cases.ts';
import { type DateTerms, loadDateTerms, termsFor } from './date-terms.ts';
import {
  type KeptRow,
  type LastLook,
  listKeptContainers,
  listKeptWarmth,
  listLastLooks,
  listMoves,
  listPlacesById,
  type WhichContainers,
} from './queries.ts';

/** `[fromOn, toOn)` at one place; without one somewhere unknown, as warm as somebody said. */
export type Stay = {
  readonly fromOn: string;
  readonly toOn: string;
  readonly placeId: string | null;
  readonly toldTenths: number | null;
};

/** A stay with how warm it was there on the whole, how that is known, and the life that it used up, in days at 70 °F. */
export type StayThere = Stay & {
  readonly days: number;
  readonly steadyTenths: number;
  readonly usedDays: number;
  readonly known: HowKnown;
};

/** How a container keeps: from what that was reckoned, for asking what else would do, and its dates. */
export type Keeping = {
  readonly input: KeptContainer;
  readonly life: KeepingLife;
  readonly dates: ThreeDates;
};

/** How a container keeps; null where nobody has said how its food does. */
type HowKept = {
  /** Where it stands; null is unknown, and reckoned as warm. */
  readonly place: PlaceRow | null;
  readonly stays: readonly StayThere[];
  /** Null where nobody looked at it, as far as whoever reads may know. */
  readonly look: LastLook | null;
  readonly keeping: Keeping | null;
};

export type Kept = KeptRow & HowKept;

/** What of a container decides how it keeps, beside where it stood. */
type Keepable = Pick<KeptRow, 'container' | 'kind' | 'food'>;

/**
 * How long containers keep and their three dates: a household's, common stock's (null), or those named. A few statements,
 * however many there are. Where a container stands now in a place that is hidden from whoever reads, that counts as unknown,
 * which is warm; how warm it stood before it changed hands goes with it.
 */
export async function loadKept(
  tx: Tx,
  storehouseId: string,
  which: WhichContainers,
  todayOn: string,
): Promise<Kept[]> {
  const rows = await listKeptContainers(tx, storehouseId, which);
  return withKeeping(tx, storehouseId, { rows, todayOn });
}

/** The same of containers that were read already, by the group's days and what its pantries ask. */
export async function withKeeping<Row extends Keepable>(
  tx: Tx,
  storehouseId: string,
  { rows, todayOn }: { rows: readonly Row[]; todayOn: string },
): Promise<(Row & HowKept)[]> {
  if (rows.length === 0) return [];
  const terms = await loadDateTerms(tx, storehouseId);
  const containerIds = rows.map(({ container }) => container.containerId);
  const moves = await listMoves(tx, storehouseId, containerIds);
  const looks = await listLastLooks(tx, storehouseId, containerIds);
  const placeIds = [...new Set(moves.flatMap(({ placeId }) => placeId ?? []))];
  const places = await listPlacesById(tx, storehouseId, placeIds);
  const warmth = await listWarmth(tx, storehouseId, placeIds);
  const isHidden = places.length < placeIds.length;
  const record = recordOf(
    { places, warmth, hidden: isHidden ? await listHidden(tx, storehouseId, rows, places) : [] },
    todayOn,
  );
  const movesOf = groupBy(moves, ({ containerId }) => containerId);
  return rows.map((row) => {
    const stays = staysOf(row.container.packedOn, movesOf.get(row.container.containerId) ?? [], todayOn);
    const look = looks.get(row.container.containerId) ?? null;
    return { ...row, ...reckonKept(row, { stays, look }, { record, todayOn, terms }) };
  });
}

/** How warm it was where these stood before they changed hands. Whose place that was, and which, stays with its household. */
async function listHidden(
  tx: Tx,
  storehouseId: string,
  rows: readonly Keepable[],
  places: readonly PlaceRow[],
): Promise<PlaceWarmthRow[]> {
  const seen = new Set(places.map(({ placeId }) => placeId));
  const ids = rows.map(({ container }) => container.containerId);
  return (await listKeptWarmth(tx, storehouseId, ids)).filter(({ placeId }) => !seen.has(placeId));
}

type Reckoning = { readonly record: PlaceRecord; readonly todayOn: string; readonly terms: DateTerms };

type Past = { readonly stays: readonly Stay[]; readonly look: LastLook | null };

function reckonKept(row: Keepable, { stays, look }: Past, reckoning: Reckoning): HowKept {
  const place = reckoning.record.placeOf(stays.at(-1)?.placeId ?? null);
  return {
    place,
    stays: stays.map((stay) => stayThere(stay, reckoning.record)),
    look,
    keeping: keepingOf(row, { place, stays, look }, reckoning),
  };
}

function keepingOf(
  { container, kind, food }: Keepable,
  { place, stays, look }: Past & { place: PlaceRow | null },
  { record, todayOn, terms }: Reckoning,
): Keeping | null {
  const keepingClass = readKeepingClass(food.keepingClass);
  if (keepingClass === null) return null;
  const input: KeptContainer = {
    keepingClass,
    barrier: readBarrier(kind.barrier),
    isDark: kind.isDark,
    treatment: readTreatment(container.treatment),
    moisturePercent: container.moistureTenths === null ? null : container.moistureTenths / 10,
    standsInLight: place?.isLit ?? null,
    openedDaysAgo: container.openedOn === null ? null : daysBetween(container.openedOn, todayOn),
    lastLook: look && { outcome: look.outcome, daysAgo: Math.max(0, daysBetween(look.inspectedOn, todayOn)) },
    history: historyOfStays(stays, record),
    nowTenthsCelsius: record.nowAt(stays.at(-1)).tenthsCelsius,
  };
  const life = keepingLifeOf(input);
  const { likelyDays: remainingDays, pastDays } = life;
  const { offerDays, offerDaysWithoutPantry } = terms;
  const pantries = termsFor({ container, kind, food }, terms);
  const days = { todayOn, remainingDays, pastDays, pantries, offerDays, offerDaysWithoutPantry };
  return { input, life, dates: threeDates(days) };
}

/** Where a container stood from the day it was packed, without gaps; until its first move nobody knows where. */
function staysOf(packedOn: string, moves: readonly ContainerMoveRow[], todayOn: string): Stay[] {
  const starts: Omit<Stay, 'toOn'>[] = [{ fromOn: packedOn, placeId: null, toldTenths: null }];
  for (const { movedOn, placeId, toldTenths } of moves) {
    if (starts.at(-1)?.fromOn === movedOn) starts.pop(); // the later word for a day counts
    const before = starts.at(-1);
    if (before?.placeId !== placeId || before.toldTenths !== toldTenths)
      starts.push({ fromOn: movedOn, placeId, toldTenths });
  }
  return starts.map((start, at) => ({ ...start, toOn: starts[at + 1]?.fromOn ?? todayOn }));
}

const LEAST_KNOWN: readonly HowKnown[] = ['unknown', 'told', 'gap', 'read'];

function stayThere(stay: Stay, record: PlaceRecord): StayThere {
  const history = record.over(stay);
  const now = record.nowAt(stay);
  const known = LEAST_KNOWN.find((how) => history.some((part) => part.known === how)) ?? now.known;
  return {
    ...stay,
    days: Math.max(0, daysBetween(stay.fromOn, stay.toOn)),
    steadyTenths: history.length === 0 ? now.tenthsCelsius : steadyTenths(history),
    usedDays: usedDays(history),
    known,
  };
}

/** The warmth of a container's whole past. The last stay counts even before its first day is over. */
function historyOfStays(stays: readonly Stay[], record: PlaceRecord): Stretch[] {
  const history = stays.flatMap((stay) => record.over(stay));
  const last = stays.at(-1);
  const isNew = last !== undefined && last.fromOn >= last.toOn;
  return isNew ? [...history, { ...record.nowAt(last), days: 0 }] : history;
}

type PlaceRecord = ReturnType<typeof recordOf>;

/** What is known of some places. Containers that were packed and moved together share one reading of it. */
function recordOf(
  known: {
    readonly places: readonly PlaceRow[];
    readonly warmth: readonly PlaceWarmthRow[];
    /** Of places that the reader may not see: what was, and not what is now. */
    readonly hidden: readonly PlaceWarmthRow[];
  },
  todayOn: string,
) {
  const { places, warmth: rows } = known;
  const placeById = new Map(places.map((place) => [place.placeId, place]));
  const rowsOf = groupBy(rows, ({ placeId }) => placeId);
  const pastOf = groupBy([...rows, ...known.hidden], ({ placeId }) => placeId);
  const read = new Map<string, Stretch[]>();
  const now = new Map<string, Omit<Stretch, 'days'>>();
  const over = ({ fromOn, toOn, placeId, toldTenths }: Stay): Stretch[] => {
    if (fromOn >= toOn) return [];
    const days = daysBetween(fromOn, toOn);
    if (toldTenths !== null) return [{ days, tenthsCelsius: toldTenths, known: 'told' }];
    if (placeId === null) return [{ days, tenthsCelsius: UNKNOWN_TENTHS_CELSIUS, known: 'unknown' }];
    return remember(read, `${placeId} ${fromOn} ${toOn}`, () =>
      warmthOver(pastOf.get(placeId) ?? [], fromOn, toOn),
    );
  };
  const nowAt = (stay: Stay | undefined): Omit<Stretch, 'days'> => {
    const { placeId = null, toldTenths = null } = stay ?? {};
    if (toldTenths !== null) return { tenthsCelsius: toldTenths, known: 'told' };
    if (placeId === null) return { tenthsCelsius: UNKNOWN_TENTHS_CELSIUS, known: 'unknown' };
    return remember(now, placeId, () => {
      const warmth = warmthNow(rowsOf.get(placeId) ?? [], todayOn);
      return { tenthsCelsius: warmth.agesLikeTenths, known: warmth.unknownDays > 0 ? 'unknown' : 'read' };
    });
  };
  return {
    over,
    nowAt,
    placeOf: (placeId: string | null) => (placeId === null ? null : (placeById.get(placeId) ?? null)),
  };
}

function remember<Value>(known: Map<string, Value>, key: string, reckon: () => Value): Value {
  const value = known.get(key) ?? reckon();
  known.set(key, value);
  return value;
}

function groupBy<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) remember(groups, keyOf(row), () => []).push(row);
  return groups;
}
