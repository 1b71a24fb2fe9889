import type { Tx } from '@sheafbook/db';
import type { SealCheckRow, SealMachineRow } from '@sheafbook/db/tables';
import { checkDueAt, closesKind, type Sealed, type SealMachineKind } from '@sheafbook/packing';
import { dayInZone } from '@sheafbook/units';
import { hasDuty } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { listMachines } from '../seam/queries.ts';
import { lastGoodOf, listDoubtsOf } from '../seam/use-cases.ts';
import type { OpenItem } from './open-item.ts';
import { answersForSeals } from './policy.ts';
import { type ClosedNow, listChecksNow, listClosedNow, listUnanswered } from './queries-seals.ts';
import { dueAtInstant } from './steps.ts';

/**
 * What waits of seals: containers of the household's own in doubt, and for whoever leads the packing the checks while a line
 * runs and the containers in doubt to answer for.
 */
export async function listSealItems(tx: Tx, context: Context, root: string): Promise<OpenItem[]> {
  return [
    ...(await listOwn(tx, context, root)),
    ...(await listDueChecks(tx, context, root)),
    ...(await listSuspects(tx, context, root)),
  ];
}

/** One item for each machine at each line that has closed something since its last good check (job map 7.8). */
async function listDueChecks(tx: Tx, { actor }: Context, root: string): Promise<OpenItem[]> {
  if (!hasDuty(actor, 'packing_lead')) return [];
  const { storehouseId, timeZone } = actor;
  const closed = await listClosedNow(tx, storehouseId);
  if (closed.length === 0) return [];
  const machines = await listMachines(tx, storehouseId);
  const checks = await listChecksNow(tx, storehouseId);
  return byLine(closed).flatMap((ofLine) => {
    const [first] = ofLine;
    if (!first) return [];
    const { packingSessionId, line, sessionName: about } = first;
    const atLine = checks.filter(
      (check) => check.packingSessionId === packingSessionId && check.line === line,
    );
    return byMachine(ofLine, machines, atLine).flatMap(({ machine, own }): OpenItem[] => {
      const dueAtMs = dueAtOf(machine, own, { line, checks: atLine });
      if (dueAtMs === null) return [];
      return [
        {
          ...dueAtInstant(new Date(dueAtMs), timeZone),
          ...{ kind: 'seam-check', words: wordsOf(machine, line, about), about, buy: null, minorUnits: null },
          ...{ part: `line ${line} ${machine.sealMachineId}`, detail: `${line}` },
          path: `${root}/packing-sessions/${packingSessionId}/seals`,
        },
      ];
    });
  });
}

/** What each line closed, in the order of the serials. */
function byLine(closed: readonly ClosedNow[]): ClosedNow[][] {
  const keyOf = ({ packingSessionId, line }: ClosedNow) => `${packingSessionId} ${line}`;
  return [...new Set(closed.map(keyOf))].map((key) => closed.filter((one) => keyOf(one) === key));
}

const closes = ({ kind }: SealMachineRow, { kindCode }: ClosedNow): boolean =>
  closesKind(kind as SealMachineKind, kindCode);

/**
 * What each machine closed of what came off a line: the one that was checked there last and can have closed it; where none
 * was, the first that runs and can. What only a hand closes is nobody's.
 */
function byMachine(
  closed: readonly ClosedNow[],
  machines: readonly SealMachineRow[],
  checks: readonly SealCheckRow[],
): { machine: SealMachineRow; own: ClosedNow[] }[] {
  const checked = checks.toReversed().flatMap(({ sealMachineId }) => {
    const machine = machines.find((one) => one.sealMachineId === sealMachineId);
    return machine ? [machine] : [];
  });
  const running = machines.filter(({ outSince }) => outSince === null);
  const machineOf = (one: ClosedNow) => [...checked, ...running].find((machine) => closes(machine, one));
  return machines
    .map((machine) => ({ machine, own: closed.filter((one) => machineOf(one) === machine) }))
    .filter(({ own }) => own.length > 0);
}

/** A line whose machine is out stands still, and waits for something else than a check in its turn. */
function dueAtOf(
  machine: SealMachineRow,
  own: readonly ClosedNow[],
  { line, checks }: { line: number; checks: readonly SealCheckRow[] },
): number | null {
  if (machine.outSince !== null) return null;
  const { good, isVouched, plan } = lastGoodOf(machine, line, checks);
  const since = own.filter((one) => !isVouched(one));
  const lastGood = good ? { atMs: good.checkedAt.getTime(), kind: good.containerKindId } : null;
  return checkDueAt(lastGood, since.map(toSealed), plan);
}

const toSealed = ({ closedAt, containerKindId }: ClosedNow): Sealed => ({
  atMs: closedAt.getTime(),
  kind: containerKindId,
});

const wordsOf = ({ kind }: SealMachineRow, line: number, session: string): string =>
  kind === 'can-seamer'
    ? `Tear down a can that line ${line} has closed, and measure it: ${session}.`
    : `Tug and squeeze under water what line ${line} has closed: ${session}.`;

/** Containers in doubt since a failed check, until somebody says what becomes of them. */
async function listSuspects(tx: Tx, { actor }: Context, root: string): Promise<OpenItem[]> {
  if (!answersForSeals(actor)) return [];
  return (await listUnanswered(tx, actor.storehouseId)).map(
    ({ sealCheckId, checkedAt, packingSessionId, sessionName: about, containers }) => ({
      ...{ kind: 'suspects-open', about, buy: null, dueOn: null, dueAt: null, minorUnits: null },
      words:
        containers === 1
          ? `A container of ${about} is in doubt since a check failed: say what becomes of it.`
          : `${containers} containers of ${about} are in doubt since a check failed: say what becomes of them.`,
      ...{ part: sealCheckId, sinceOn: dayInZone(checkedAt.getTime(), actor.timeZone) },
      path: `${root}/packing-sessions/${packingSessionId}/seals`,
    }),
  );
}

/** Whoever owns a container whose seal is in doubt sees to it before it is eaten; what stands in a new one asks for nothing. */
async function listOwn(tx: Tx, { actor }: Context, root: string): Promise<OpenItem[]> {
  if (actor.householdId === null) return [];
  const doubts = await listDoubtsOf(tx, actor.storehouseId, actor.householdId);
  const containers = doubts.filter(({ newCode }) => newCode === null).length;
  if (containers === 0) return [];
  const words =
    containers === 1
      ? 'The seal of a container of yours is in doubt: read what to do with it.'
      : `The seals of ${containers} containers of yours are in doubt: read what to do with each.`;
  const nothing = { buy: null, dueOn: null, dueAt: null, minorUnits: null };
  return [{ ...nothing, kind: 'own-doubts', words, path: `${root}/own-doubts` }];
}
