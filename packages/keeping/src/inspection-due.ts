import { addDays, assert, compareText, daysBetween } from '@sheafbook/units';
import type { Barrier } from './container-traits.ts';
import { sampleOf } from './inspection.ts';

/**
 * A container that may be looked at. Units: ISO days. Errors: none by itself.
 */
export type LookedAt = {
  readonly code: string;
  readonly lotId: string;
  readonly barrier: Barrier | null;
  readonly packedOn: string;
  readonly openedOn: string | null;
  readonly lastOn: string | null;
};

/** Why a container is to be looked at. Units: none. Errors: none. */
export type WhyDue = 'open' | 'pouch-or-jar' | 'sample';

/** A container to be looked at, from its day on. Units: ISO days. Errors: none by itself. */
export type InspectionDue<Row extends LookedAt = LookedAt> = {
  readonly row: Row;
  readonly why: WhyDue;
  readonly dueOn: string;
};

const OPEN_DAYS = 30;
const SOFT_DAYS = 180;
const YEAR_DAYS = 365;

/**
 * What is to be looked at by a day, the longest overdue first: what is open after 30 days, pouches, jars and pails after 180,
 * and of the shut cans of each lot ⌈√n⌉ within a year, those first that nobody looked at for longest.
 * Units: ISO days. Errors: AssertionError when a day is none.
 * Source: common practice, no source.
 */
export function inspectionsDue<Row extends LookedAt>(
  rows: readonly Row[],
  byOn: string,
): InspectionDue<Row>[] {
  const [cans, others] = [rows.filter(isShutCan), rows.filter((row) => !isShutCan(row))];
  const single = others.map((row) => {
    const why: WhyDue = row.openedOn === null ? 'pouch-or-jar' : 'open';
    return { row, why, dueOn: addDays(lastLooked(row), why === 'open' ? OPEN_DAYS : SOFT_DAYS) };
  });
  const lots = new Set(cans.map(({ lotId }) => lotId));
  const sampled = [...lots].flatMap((lotId) =>
    sampleDue(
      cans.filter((row) => row.lotId === lotId),
      byOn,
    ),
  );
  return [...single, ...sampled]
    .filter(({ dueOn }) => dueOn <= byOn)
    .toSorted((a, b) => compareText(a.dueOn, b.dueOn) || compareText(a.row.code, b.row.code));
}

/**
 * By when a shut container is to be looked at next, as its label says it: a can once a year from its packing, anything softer
 * twice.
 * Units: ISO days; after `todayOn`. Errors: AssertionError when a day is none. Source: common practice, no source.
 */
export function inspectByOn(
  { barrier, packedOn }: Pick<LookedAt, 'barrier' | 'packedOn'>,
  todayOn: string,
): string {
  const days = barrier === 'metal' ? YEAR_DAYS : SOFT_DAYS;
  const times = Math.max(0, Math.floor(daysBetween(packedOn, todayOn) / days)) + 1;
  return addDays(packedOn, times * days);
}

const isShutCan = ({ barrier, openedOn }: LookedAt) => barrier === 'metal' && openedOn === null;
const lastLooked = ({ lastOn, openedOn, packedOn }: LookedAt) =>
  [lastOn, openedOn, packedOn].reduce<string>((latest, on) => (on !== null && on > latest ? on : latest), '');

/** Of a lot that is a year old, as many as its sample still wants. */
function sampleDue<Row extends LookedAt>(cans: readonly Row[], byOn: string): InspectionDue<Row>[] {
  assert(cans.length > 0, 'a lot is named by its cans');
  const wanted = sampleOf(cans.length);
  const seen = cans.filter(({ lastOn }) => lastOn !== null && daysBetween(lastOn, byOn) < YEAR_DAYS).length;
  return cans
    .filter(({ lastOn }) => lastOn === null || daysBetween(lastOn, byOn) >= YEAR_DAYS)
    .toSorted((a, b) => compareText(lastLooked(a), lastLooked(b)) || compareText(a.code, b.code))
    .slice(0, Math.max(0, wanted - seen))
    .map((row) => ({ row, why: 'sample' as const, dueOn: addDays(lastLooked(row), YEAR_DAYS) }));
}
