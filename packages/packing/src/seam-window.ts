import { assert, assertWhole } from '@sheafbook/units';

/** A check of what a machine closed. Units: `serial` is the last one closed when it was made. Errors: none. */
export type SealCheck = { readonly serial: number; readonly passed: boolean };

/** Serials in doubt, both ends in it; null when none is. Units: serials from 1. Errors: none. */
export type SuspectWindow = { readonly fromSerial: number; readonly toSerial: number } | null;

/**
 * Every container that a machine closed after its last good check, up to where it was stopped. What was never checked is
 * in doubt too; what a good check stands behind is not.
 * Units: serials from 1. Errors: AssertionError when a check lies beyond the last serial or the checks run backwards.
 */
export function suspectWindow(checks: readonly SealCheck[], lastSerial: number): SuspectWindow {
  assertWhole(lastSerial, 'lastSerial');
  let goodThrough = 0;
  let before = 0;
  for (const check of checks) {
    assertWhole(check.serial, 'serial');
    assert(check.serial >= before, 'checks come in the order of the serials');
    assert(check.serial <= lastSerial, 'no check is of a container that is not closed yet');
    before = check.serial;
    if (check.passed) goodThrough = check.serial;
  }
  return goodThrough >= lastSerial ? null : { fromSerial: goodThrough + 1, toSerial: lastSerial };
}

/**
 * A window narrowed by opening some of its containers, halving each time. It helps only against a fault that came and
 * stayed (a drift): a good one clears all up to it, a bad one shows that the fault was there already. A good one after a bad
 * one shows a fault that comes and goes, such as a chip in the chuck: then what comes after the bad one is tested one by one.
 * Units: serials. Shape: `nextToOpen` is null once the first bad one is known; `isDrift` is false for a fault that comes and
 * goes. Errors: AssertionError when the window is reversed or an opened one is not in it.
 */
export function bisectWindow(
  { fromSerial, toSerial }: NonNullable<SuspectWindow>,
  opened: readonly SealCheck[],
): { readonly suspects: SuspectWindow; readonly nextToOpen: number | null; readonly isDrift: boolean } {
  assert(fromSerial <= toSerial, 'a window runs forward');
  assert(
    opened.every(({ serial }) => serial >= fromSerial && serial <= toSerial),
    'an opened container is one of the window',
  );
  const serialsThat = (passed: boolean) =>
    opened.filter((check) => check.passed === passed).map(({ serial }) => serial);
  const firstBad = Math.min(toSerial + 1, ...serialsThat(false));
  const good = serialsThat(true);
  const firstSuspect = Math.max(
    fromSerial,
    ...good.filter((serial) => serial < firstBad).map((serial) => serial + 1),
  );
  const isDrift = good.every((serial) => serial < firstBad);
  if (firstSuspect > toSerial) return { suspects: null, nextToOpen: null, isDrift };
  const hasUnknown = firstSuspect < firstBad;
  const nextToOpen = isDrift && hasUnknown ? Math.floor((firstSuspect + firstBad - 1) / 2) : null;
  return { suspects: { fromSerial: firstSuspect, toSerial }, nextToOpen, isDrift };
}

/** When a machine's next check is due. Units: containers, minutes. Errors: none. */
export type CheckPlan = { readonly everyContainers: number; readonly everyMinutes: number };

/** A teardown each hour or each 150 cans, whichever is first. Units: as `CheckPlan`. Errors: none. Source: common practice, no source. */
export const TEARDOWN_PLAN: CheckPlan = { everyContainers: 150, everyMinutes: 60 };

/** A squeeze of the first, each thirtieth and the last pouch. Units: as `CheckPlan`. Errors: none. Source: common practice, no source. */
export const SQUEEZE_PLAN: CheckPlan = { everyContainers: 30, everyMinutes: 60 };

/**
 * How many more containers and minutes a machine may run before its next check; zero in either means now. The first
 * container of a run is checked before any other is closed, so a machine without a good check is due at once.
 * Units: containers, whole minutes. Errors: AssertionError when a figure is below zero.
 */
export function checkDue(
  since: { readonly containers: number; readonly minutes: number } | null,
  plan: CheckPlan = TEARDOWN_PLAN,
): { readonly containersLeft: number; readonly minutesLeft: number; readonly isDue: boolean } {
  if (since === null) return { containersLeft: 0, minutesLeft: 0, isDue: true };
  assertWhole(since.containers, 'containers');
  assert(since.minutes >= 0, 'time does not run backwards');
  const containersLeft = Math.max(0, plan.everyContainers - since.containers);
  const minutesLeft = Math.max(0, Math.floor(plan.everyMinutes - since.minutes));
  return { containersLeft, minutesLeft, isDue: containersLeft === 0 || minutesLeft === 0 };
}

/** A machine runs again after three good teardowns in a row since it failed. Units: none. Errors: none. Source: common practice, no source. */
export function isClearedToRun(sinceTheFailure: readonly SealCheck[], clears = 3): boolean {
  const last = sinceTheFailure.slice(-clears);
  return last.length === clears && last.every(({ passed }) => passed);
}
