import type { Tx } from '@sheafbook/db';
import type { ContainerKindRow, SealCheckRow, SealMachineRow, SeamLimitRow } from '@sheafbook/db/tables';
import { closesKind, type SeamMeasures, seamOverlapPercent } from '@sheafbook/packing';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listAllContainerKinds, loadContainerKind } from '../container-kind/queries.ts';
import { listWishes, loadSession } from '../packing-session/queries.ts';
import { checkOf, isTrial } from './moments.ts';
import { listCheckers, listClosedOfSession, listMachines, listSealHolds, loadCheck } from './queries.ts';
import { noteOwnersRead, readWatch } from './use-cases-watch.ts';

type Limited = { readonly kind: ContainerKindRow; readonly limit: SeamLimitRow };

/**
 * The seam log of a packing day. Every can that is wished for, closed or checked there has its maker's limits, or there is no
 * log: a measure that nothing is compared with says nothing.
 */
export async function readSeamLog(context: Context, sessionId: string) {
  const watch = await readWatch(context, sessionId);
  const found = await withTx(context, (tx) => listSeamedKinds(tx, context.actor.storehouseId, watch));
  // Before anything is wished for, every can that has its limits may come.
  if (found.length === 0 && watch.limits.length === 0 && watch.checks.length === 0)
    throw new Problem('seam-limits-missing');
  const kinds = found.map((kind): Limited => {
    const limit = watch.limits.find(({ containerKindId }) => containerKindId === kind.containerKindId);
    if (!limit) throw new Problem('seam-limits-missing', { containerKindId: kind.containerKindId });
    return { kind, limit };
  });
  return {
    watch,
    kinds,
    overlapTenths: new Map(watch.checks.flatMap((check) => overlapOf(check, kinds))),
    clears: new Map(
      watch.windows.map(({ check }) => [check.sealCheckId, clearsOf(check, watch.machines, watch.checks)]),
    ),
  };
}
export type SeamLog = Awaited<ReturnType<typeof readSeamLog>>;

async function listSeamedKinds(
  tx: Tx,
  storehouseId: string,
  { session, checks, limits }: Awaited<ReturnType<typeof readWatch>>,
): Promise<ContainerKindRow[]> {
  const { packingSessionId: sessionId } = session;
  const closed = await listClosedOfSession(tx, storehouseId, sessionId);
  const wished = await listWishes(tx, storehouseId, { sessionId });
  const here = new Set([
    ...[...closed, ...checks].map(({ containerKindId }) => containerKindId),
    ...wished.map(({ kind }) => kind.containerKindId),
  ]);
  const cans = (await listAllContainerKinds(tx, storehouseId)).filter(({ kindCode }) =>
    closesKind('can-seamer', kindCode),
  );
  const limited = new Set(limits.map(({ containerKindId }) => containerKindId));
  const wanted = cans.filter(({ containerKindId }) => here.has(containerKindId));
  return wanted.length > 0 ? wanted : cans.filter(({ containerKindId }) => limited.has(containerKindId));
}

/** In tenths of a per cent, as the check was judged by. */
function overlapOf(
  { sealCheckId, containerKindId, measures }: SealCheckRow,
  kinds: readonly Limited[],
): [string, number][] {
  const limit = kinds.find(({ kind }) => kind.containerKindId === containerKindId)?.limit;
  if (measures === null || !limit) return [];
  const plates = { lidPlateMils: limit.lidPlate, bodyPlateMils: limit.bodyPlate };
  return [[sealCheckId, Math.round(seamOverlapPercent(measures as SeamMeasures, plates) * 10)]];
}

const THREE = 3;

/** The trials in a row that let the machine run again after a check that failed, as far as there are. */
function clearsOf(
  failed: SealCheckRow,
  machines: readonly SealMachineRow[],
  checks: readonly SealCheckRow[],
): SealCheckRow[] {
  const machine = machines.find(({ sealMachineId }) => sealMachineId === failed.sealMachineId);
  const how = checkOf(machine?.kind ?? '');
  let inRow: SealCheckRow[] = [];
  const since = checks.findIndex(({ sealCheckId }) => sealCheckId === failed.sealCheckId);
  for (const check of checks.slice(since + 1)) {
    if (check.sealMachineId !== failed.sealMachineId) continue;
    if (inRow.length === THREE || !isTrial(check)) continue;
    if (!check.passed) inRow = [];
    else if (check.how === how) inRow.push(check);
  }
  return inRow;
}

/** What one failed check put in doubt, for the tag that lies on it. */
export function readDoubt(context: Context, checkId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const check = await loadCheck(tx, storehouseId, checkId);
    const { packingSessionId: sessionId } = check;
    const all = await listSealHolds(tx, storehouseId, { sessionId });
    const held = all.filter(({ hold }) => hold.sealCheckId === checkId);
    if (held.length === 0) throw new Problem('thing-not-found', { thing: 'container in doubt' });
    await noteOwnersRead(tx, context, held);
    const machines = await listMachines(tx, storehouseId);
    return {
      ...{ check, held, session: await loadSession(tx, storehouseId, sessionId) },
      kind: await loadContainerKind(tx, storehouseId, check.containerKindId),
      machine: machines.find(({ sealMachineId }) => sealMachineId === check.sealMachineId)?.name ?? '',
      checkedByName: (await listCheckers(tx, storehouseId, sessionId)).get(check.checkedBy) ?? '',
    };
  });
}
export type Doubt = Awaited<ReturnType<typeof readDoubt>>;
