/** When a line closed a container. Units: milliseconds since 1970, serials from 1. Errors: none. */
export type ClosedAt = { readonly closedMs: number; readonly serial: number };

/**
 * A check with its moment. `isLive` when it was written down as it was made, so that what its line had closed by then is known
 * by count (`closedThrough`) and not only by the clock. A good one stands for what was closed up to `goodMs`, and of that
 * millisecond up to the number `goodSerial`.
 * Units: milliseconds since 1970, serials from 1. Errors: none.
 */
export type TimedCheck = {
  readonly id: string;
  readonly machineId: string;
  readonly line: number;
  readonly how: string;
  readonly passed: boolean;
  /** Of a can that was closed for the check alone. */
  readonly isTrial: boolean;
  readonly atMs: number;
  readonly isLive: boolean;
  readonly closedThrough: number;
  readonly goodMs: number;
  readonly goodSerial: number;
};

/**
 * Up to where a good check stands: up to the container that it names, or up to its own moment; to the earlier of the two. Of
 * what was closed in the very moment of a check that waited on a phone or a paper, nothing: nobody knows which was first.
 * Units: milliseconds since 1970, serials from 1. Errors: none.
 */
export function standsUpTo(
  check: Pick<TimedCheck, 'atMs' | 'isLive' | 'closedThrough'>,
  named: ClosedAt | null,
): Pick<TimedCheck, 'goodMs' | 'goodSerial'> {
  if (named !== null && named.closedMs <= check.atMs)
    return { goodMs: named.closedMs, goodSerial: named.serial };
  const goodSerial = named === null && check.isLive ? check.closedThrough : 0;
  return { goodMs: check.atMs, goodSerial };
}

/** Whether a good check stands for a container. Units: as `TimedCheck`. Errors: none. */
export const standsFor = (
  { goodMs, goodSerial }: Pick<TimedCheck, 'goodMs' | 'goodSerial'>,
  { closedMs, serial }: ClosedAt,
): boolean => closedMs < goodMs || (closedMs === goodMs && serial <= goodSerial);

/** Whether a container was surely closed after a check was made. Units: as `TimedCheck`. Errors: none. */
export const isClosedAfter = (
  { closedMs, serial }: ClosedAt,
  { atMs, isLive, closedThrough }: TimedCheck,
): boolean => closedMs > atMs || (closedMs === atMs && isLive && serial > closedThrough);

/**
 * The order in which checks were made, whatever order they arrived in. Where two were said of one moment the failed one comes
 * last, so that no trial before it counts; live ones are told apart by their arrival.
 * Units: as `TimedCheck`. Errors: none.
 */
export function compareChecks(a: TimedCheck, b: TimedCheck): number {
  if (a.atMs !== b.atMs) return a.atMs - b.atMs;
  if (a.isLive !== b.isLive) return a.isLive ? 1 : -1;
  if (!a.isLive && a.passed !== b.passed) return a.passed ? -1 : 1;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

const isMadeBefore = (a: TimedCheck, b: TimedCheck): boolean =>
  a.atMs < b.atMs || (a.atMs === b.atMs && a.isLive && b.isLive && a.id < b.id);

const CLEARS = 3;

/**
 * Since when a machine is out, and by which check it was let run again after each one that failed; null while it was not. A
 * fault stops it, three good trials in a row since let it run.
 * Units: milliseconds since 1970. Shape: `checks` in their order, all of one machine. Errors: none. Source: common practice,
 * no source.
 */
export function stopsOf(
  checks: readonly TimedCheck[],
  judgingHow: string,
): { readonly outSinceMs: number | null; readonly clearedBy: ReadonlyMap<string, TimedCheck | null> } {
  const clearedBy = new Map<string, TimedCheck | null>();
  let outSinceMs: number | null = null;
  let inRow = 0;
  let ofStop: string[] = [];
  for (const check of checks) {
    if (!check.passed) {
      clearedBy.set(check.id, null);
      ofStop.push(check.id);
      if (outSinceMs === null) {
        outSinceMs = check.atMs;
        inRow = 0;
      }
    }
    if (!check.isTrial || outSinceMs === null) continue;
    if (!check.passed) inRow = 0;
    else if (check.how === judgingHow) inRow += 1;
    if (inRow < CLEARS) continue;
    for (const id of ofStop) clearedBy.set(id, check);
    outSinceMs = null;
    inRow = 0;
    ofStop = [];
  }
  return { outSinceMs, clearedBy };
}

/** A container, and the machines that can have closed it. Units: as `ClosedAt`. Errors: none. */
export type ClosedBy = ClosedAt & { readonly machineIds: readonly string[] };

/**
 * Whether a failed check puts a container of its line in doubt, told from the moments alone, so that whatever waited on a phone
 * changes nothing by when it arrives. In doubt is what was closed after the last good check that was made before, until the
 * machine was let run again or another had taken over. A good check beyond a container that was found bad counts for nothing.
 * Units: as `TimedCheck`. Shape: `checks` are those of the line in their order; `vouchers` the kinds of check that stand good
 * before this one. Errors: none. Source: job map 7.8 and 15, numbers 19 and 20.
 */
export function isPutInDoubt(
  container: ClosedBy,
  failed: TimedCheck,
  about: {
    readonly checks: readonly TimedCheck[];
    readonly vouchers: readonly string[];
    readonly clearedBy: TimedCheck | null;
  },
): boolean {
  if (!container.machineIds.includes(failed.machineId)) return false;
  const found = failed.isTrial ? null : { closedMs: failed.goodMs, serial: failed.goodSerial };
  const isVouched = about.checks.some(
    (good) =>
      good.passed &&
      good.machineId === failed.machineId &&
      about.vouchers.includes(good.how) &&
      isMadeBefore(good, failed) &&
      !(found && standsFor(good, found)) &&
      standsFor(good, container),
  );
  if (isVouched) return false;
  if (!isClosedAfter(container, failed)) return true;
  if (about.clearedBy && isClosedAfter(container, about.clearedBy)) return false;
  const last = about.checks.findLast(
    (check) => container.machineIds.includes(check.machineId) && isClosedAfter(container, check),
  );
  return last === undefined || last.machineId === failed.machineId;
}
