import type { SealCheckRow, SealMachineRow } from '@sheafbook/db/tables';
import {
  bisectWindow,
  checkDue,
  closesKind,
  type SealMachineKind,
  SQUEEZE_PLAN,
  TEARDOWN_PLAN,
} from '@sheafbook/packing';
import { assert } from '@sheafbook/units';
import type { Closed, SealHeld } from './queries.ts';

/** What stands good for what came before it: a look at a seam says nothing of what a teardown finds. */
export const VOUCHES: Readonly<Record<string, readonly string[]>> = {
  teardown: ['teardown'],
  visual: ['visual', 'teardown'],
  squeeze: ['squeeze'],
};

/** The check by which a machine is judged: a seam is torn down, a heat seal or a vacuum is tugged and squeezed. */
export const checkOf = (kind: string) => (kind === 'can-seamer' ? 'teardown' : 'squeeze');

/**
 * `bad` failed a check; `opened` was torn down and passed, and is closed no more; `cleared` is vouched for; `suspect` is still
 * in doubt.
 */
export type SuspectState = 'bad' | 'opened' | 'cleared' | 'suspect';
export type Suspect = { readonly held: SealHeld; readonly state: SuspectState };
export type SealWindow = {
  readonly check: SealCheckRow;
  readonly isDrift: boolean;
  readonly nextToOpen: number | null;
  readonly suspects: readonly Suspect[];
};

/** The windows of failed checks, oldest first, with what is known of each container by now. */
export function windowsOf(holds: readonly SealHeld[], checks: readonly SealCheckRow[]): SealWindow[] {
  const checkIds = [...new Set(holds.map(({ hold }) => hold.sealCheckId))];
  return checkIds.map((checkId) => {
    const ofCheck = holds.filter(({ hold }) => hold.sealCheckId === checkId);
    const [first] = ofCheck;
    const last = ofCheck.at(-1);
    assert(first && last, 'a check is named by what it holds');
    const window = { fromSerial: first.serial, toSerial: last.serial };
    const opened = openedOf(first.check, window, checks);
    const { suspects, nextToOpen, isDrift } = bisectWindow(window, opened);
    const firstBad = Math.min(window.toSerial + 1, ...opened.filter(({ passed }) => !passed).map(bySerial));
    const firstSuspect = suspects?.fromSerial ?? window.toSerial + 1;
    const stateOf = ({ serial }: SealHeld): SuspectState => {
      const own = opened.filter((one) => one.serial === serial);
      if (own.some(({ passed }) => !passed)) return 'bad';
      if (own.some(({ how }) => how === 'teardown')) return 'opened';
      return own.length > 0 || serial < firstSuspect ? 'cleared' : 'suspect';
    };
    const unknown = ofCheck.map(bySerial).filter((serial) => serial >= firstSuspect && serial < firstBad);
    return {
      ...{ check: first.check, isDrift, suspects: ofCheck.map((held) => ({ held, state: stateOf(held) })) },
      nextToOpen: nextToOpen === null ? null : nearest(unknown, nextToOpen),
    };
  });
}

const bySerial = ({ serial }: { readonly serial: number }): number => serial;

/** Serials may be missing: what was put back, and what another machine closed. */
const nearest = (serials: readonly number[], wanted: number): number | null =>
  serials.toSorted((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted) || a - b)[0] ?? null;

/** What was looked at of a window since it failed; where one was judged twice, the worse stands. */
function openedOf(
  failed: SealCheckRow,
  { fromSerial, toSerial }: { fromSerial: number; toSerial: number },
  checks: readonly SealCheckRow[],
) {
  const opened = checks.flatMap(({ sealCheckId, sealMachineId, line, serial, passed, how }) =>
    sealCheckId >= failed.sealCheckId &&
    sealMachineId === failed.sealMachineId &&
    line === failed.line &&
    serial !== null &&
    serial >= fromSerial &&
    serial <= toSerial &&
    (!passed || VOUCHES[failed.how]?.includes(how))
      ? [{ serial, passed, how }]
      : [],
  );
  const bad = new Set(opened.filter(({ passed }) => !passed).map(bySerial));
  return opened.filter(({ serial, passed }) => !passed || !bad.has(serial));
}

/**
 * From where a machine's next check at a line is counted: its last good one of the kind that judges it, up to which serial
 * that vouches, and how often one is due.
 */
export function lastGoodOf(
  { kind, sealMachineId }: SealMachineRow,
  line: number,
  checks: readonly SealCheckRow[],
) {
  const how = checkOf(kind);
  const good = checks.findLast(
    (check) =>
      check.passed && check.how === how && check.line === line && check.sealMachineId === sealMachineId,
  );
  const plan = how === 'teardown' ? TEARDOWN_PLAN : SQUEEZE_PLAN;
  return { how, good, through: good ? (good.serial ?? good.closedThrough) : 0, plan };
}

export type LineWatch = ReturnType<typeof watchLine>;

/** When a machine at a line is to be checked, and how far it is back when it is out. */
export function watchLine(
  machine: SealMachineRow,
  of: { line: number; closed: readonly Closed[]; checks: readonly SealCheckRow[]; now: Date },
) {
  const { line, now } = of;
  const { how, good, through, plan } = lastGoodOf(machine, line, of.checks);
  const closed = of.closed.filter(
    (one) => one.line === line && closesKind(machine.kind as SealMachineKind, one.kindCode),
  );
  const containers = closed.filter(({ serial }) => serial > through).length;
  const minutes = good ? Math.max(0, (now.getTime() - good.checkedAt.getTime()) / 60_000) : 0;
  const due = checkDue(good ? { containers, minutes } : null, plan);
  const lastKindId = closed.at(-1)?.containerKindId ?? null;
  const isOtherKind = good !== undefined && containers > 0 && lastKindId !== good.containerKindId;
  const whyRun = due.containersLeft === 0 ? 'count' : due.minutesLeft === 0 ? 'time' : null;
  return {
    ...{ line, machine, how, lastGood: good ?? null, closedSince: containers, lastKindId, plan },
    ...{ containersLeft: due.containersLeft, minutesLeft: due.minutesLeft },
    // A line that stands still needs no check until it closes something.
    why: !good ? 'first' : isOtherKind ? 'changeover' : containers === 0 ? null : whyRun,
  } as const;
}

/** A can that is closed for the check alone: only such tell how a machine closes now that is out. */
export const isTrial = ({ serial }: { readonly serial: number | null }): boolean => serial === null;
