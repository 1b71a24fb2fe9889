import { seamFaultsOf, stopsOf, type TimedCheck } from '@sheafbook/packing';
import type { Waiting } from '../../api/outbox.ts';
import type { CheckMade, LogAct } from '../packing/log-act.ts';
import type { Limit, Machine, Watch } from './queries.ts';

type Known = Pick<Watch, 'limits' | 'machines'>;

/**
 * The machines as they stand by the book and by the checks that wait on this phone: a fault stops a machine at once, and three
 * good trials let it run, whether anybody has a signal or not.
 */
export function machinesHere(known: Known, waiting: readonly Waiting<LogAct>[]): Machine[] {
  return known.machines.map((machine) => {
    const own = waiting.flatMap((one) =>
      one.refusal === null && one.act.kind === 'check' && one.act.json.machineId === machine.id
        ? timed(one, one.act.json, known.limits)
        : [],
    );
    if (own.length === 0) return machine;
    const before = machine.outSince === null ? [] : [stopOf(Date.parse(machine.outSince))];
    const { outSinceMs } = stopsOf(
      [...before, ...own],
      machine.kind === 'can-seamer' ? 'teardown' : 'squeeze',
    );
    return { ...machine, outSince: outSinceMs === null ? null : new Date(outSinceMs).toISOString() };
  });
}

/** The same of a whole reading. */
export function watchHere(watch: Watch, waiting: readonly Waiting<LogAct>[]): Watch {
  const machines = machinesHere(watch, waiting);
  const lines = watch.lines.map((line) => ({
    ...line,
    machine: machines.find(({ id }) => id === line.machine.id) ?? line.machine,
  }));
  return { ...watch, machines, lines };
}
const NOTHING = { line: 0, closedThrough: 0, goodMs: 0, goodSerial: 0, machineId: '', isLive: false };
const stopOf = (atMs: number): TimedCheck => ({
  ...{ ...NOTHING, id: 'of the book', atMs },
  ...{ how: '', passed: false, isTrial: false },
});

/** None of a check that the book will refuse for its width. */
function timed({ id, at }: Waiting<LogAct>, check: CheckMade, limits: readonly Limit[]): TimedCheck[] {
  const limit = limits.find(({ containerKindId }) => containerKindId === check.containerKindId);
  const faults = check.measures && limit ? seamFaultsOf(check.measures, limit) : [];
  if (faults === null) return [];
  return [
    {
      ...{ ...NOTHING, id, how: check.how, isTrial: check.serial === null },
      ...{ passed: check.looksGood && faults.length === 0, atMs: Date.parse(check.checkedAt ?? at) },
    },
  ];
}
