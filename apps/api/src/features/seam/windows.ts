import type { SealCheckRow, SealMachineRow } from '@sheafbook/db/tables';
import {
  bisectWindow,
  checkDue,
  closesKind,
  type SealMachineKind,
  SQUEEZE_PLAN,
  standsFor,
  TEARDOWN_PLAN,
} from '@sheafbook/packing';
import { assert } from '@sheafbook/units';
import { checkOf, doubtsAt, momentOf, timed, VOUCHES } from './moments.ts';
import type { Closed, SealHeld } from './queries.ts';

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
export function windowsOf(
  holds: readonly SealHeld[],
  checks: readonly SealCheckRow[],
  machines: readonly SealMachineRow[],
): SealWindow[] {
  const checkIds = [...new Set(holds.map(({ hold }) => hold.sealCheckId))];
  return checkIds.map((checkId) => {
    const ofCheck = holds.filter(({ hold }) => hold.sealCheckId === checkId);
    const [first] = ofCheck;
    assert(first, 'a check is named by what it holds');
    const doubts = doubtsAt(first.check.line, checks, machines);
    // A good check that was made before the failed one and came after it takes what it stands for out of the window.
    const places = ofCheck.filter((held) => doubts.some(({ has }) => has(held))).toSorted(inTime);
    const placeOf = (serial: number | null) => places.findIndex((held) => held.serial === serial) + 1;
    const opened = openedOf(first.check, checks).flatMap(({ serial, passed, how }) =>
      placeOf(serial) > 0 ? [{ serial: placeOf(serial), passed, how }] : [],
    );
    const serialAt = (place: number) => places[place - 1]?.serial ?? 0;
    const isEmpty = places.length === 0;
    const { suspects, nextToOpen, isDrift } = isEmpty
      ? { suspects: null, nextToOpen: null, isDrift: true }
      : bisectWindow({ fromSerial: 1, toSerial: places.length }, opened);
    const firstSuspect = suspects?.fromSerial ?? places.length + 1;
    const stateOf = ({ serial }: SealHeld): SuspectState => {
      const own = openedOf(first.check, checks).filter((one) => one.serial === serial);
      if (own.some(({ passed }) => !passed)) return 'bad';
      if (own.some(({ how }) => how === 'teardown')) return 'opened';
      return own.length > 0 || placeOf(serial) < firstSuspect ? 'cleared' : 'suspect';
    };
    return {
      ...{ check: first.check, isDrift, suspects: ofCheck.map((held) => ({ held, state: stateOf(held) })) },
      nextToOpen: nextToOpen === null ? null : serialAt(nextToOpen),
    };
  });
}

const inTime = (a: SealHeld, b: SealHeld) =>
  a.closedAt.getTime() - b.closedAt.getTime() || a.serial - b.serial;
const bySerial = ({ serial }: { readonly serial: number | null }): number | null => serial;

/**
 * What was looked at one by one: good since a window failed, and bad whenever that was found. Where one was judged twice, the
 * worse stands.
 */
function openedOf(failed: SealCheckRow, checks: readonly SealCheckRow[]) {
  const since = checks.findIndex(({ sealCheckId }) => sealCheckId === failed.sealCheckId);
  const opened = checks.filter(
    ({ sealMachineId, line, serial, passed, how }, at) =>
      sealMachineId === failed.sealMachineId &&
      line === failed.line &&
      serial !== null &&
      (!passed || (at >= since && VOUCHES[failed.how]?.includes(how))),
  );
  const bad = new Set(opened.filter(({ passed }) => !passed).map(bySerial));
  return opened.filter(({ serial, passed }) => !passed || !bad.has(serial));
}

/**
 * From where a machine's next check at a line is counted: its last good one of the kind that judges it, for what
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
  const isVouched = (one: { serial: number; closedAt: Date }) =>
    good !== undefined && standsFor(timed(good), momentOf(one));
  return { how, good, isVouched, plan };
}

export type LineWatch = ReturnType<typeof watchLine>;

/** When a machine at a line is to be checked, and how far it is back when it is out. Once the day is over nothing is due any more. */
export function watchLine(
  machine: SealMachineRow,
  of: {
    line: number;
    closed: readonly Closed[];
    checks: readonly SealCheckRow[];
    isOver: boolean;
    now: Date;
  },
) {
  const { line, now } = of;
  const { how, good, isVouched, plan } = lastGoodOf(machine, line, of.checks);
  const closed = of.closed.filter(
    (one) => one.line === line && closesKind(machine.kind as SealMachineKind, one.kindCode),
  );
  const containers = closed.filter((one) => !isVouched(one)).length;
  const minutes = good ? Math.max(0, (now.getTime() - good.checkedAt.getTime()) / 60_000) : 0;
  const due = checkDue(good ? { containers, minutes } : null, plan);
  const lastKindId = closed.at(-1)?.containerKindId ?? null;
  const isOtherKind = good !== undefined && containers > 0 && lastKindId !== good.containerKindId;
  const whyRun = due.containersLeft === 0 ? 'count' : due.minutesLeft === 0 ? 'time' : null;
  return {
    ...{ line, machine, how, lastGood: good ?? null, closedSince: containers, lastKindId, plan },
    ...{ containersLeft: due.containersLeft, minutesLeft: due.minutesLeft },
    // A line that stands still needs no check until it closes something.
    why: of.isOver ? null : !good ? 'first' : isOtherKind ? 'changeover' : containers === 0 ? null : whyRun,
  } as const;
}
