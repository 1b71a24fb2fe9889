import { assert, assertWhole } from '@sheafbook/units';

/**
 * A check at a line: how many containers the line had closed by then, and up to which serial it stands good; null when it
 * failed or was not of the kind that judges the machine. Units: serials from 1. Errors: none by itself.
 */
export type LineCheck = {
  readonly machineId: string;
  readonly closedThrough: number;
  readonly goodThrough: number | null;
};

/**
 * Serials for which no good check stands, and the machine that closed them; null when none was ever checked at the line.
 * Units: serials from 1. Errors: none.
 */
export type Unvouched = {
  readonly machineId: string | null;
  readonly fromSerial: number;
  readonly toSerial: number;
};

/**
 * What a line closed and no good check stands behind, machine by machine. The machine that is checked first closed all from the
 * start; another takes over with what is closed after its own first check, so that its good checks say nothing of what was
 * closed before them.
 * Units: serials from 1, rising. Shape: one span for each machine, in the order in which they took over; serials may be
 * missing from it. Errors: AssertionError when serials or checks run backwards. Source: job map 15, number 19.
 */
export function listUnvouched(serials: readonly number[], checks: readonly LineCheck[]): Unvouched[] {
  for (const serial of serials) assertWhole(serial, 'serial');
  assert(isRising(serials), 'serials rise');
  assert(isRising(checks.map(({ closedThrough }) => closedThrough)), 'checks come in their order');
  const runs = checks.filter(({ machineId }, at) => machineId !== checks[at - 1]?.machineId);
  const machineOf = (serial: number) =>
    runs.findLast(({ closedThrough }, at) => at === 0 || serial > closedThrough)?.machineId ?? null;
  const goodThrough = (machineId: string | null) =>
    Math.max(0, ...checks.map((check) => (check.machineId === machineId ? (check.goodThrough ?? 0) : 0)));
  const open = serials
    .map((serial) => ({ serial, machineId: machineOf(serial) }))
    .filter(({ serial, machineId }) => serial > goodThrough(machineId));
  return [...new Set(open.map(({ machineId }) => machineId))].map((machineId) => {
    const own = open.filter((one) => one.machineId === machineId).map(({ serial }) => serial);
    return { machineId, fromSerial: Math.min(...own), toSerial: Math.max(...own) };
  });
}

const isRising = (numbers: readonly number[]) =>
  numbers.every((number, at) => at === 0 || number >= (numbers[at - 1] ?? 0));
