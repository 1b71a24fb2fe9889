import type { Tx } from '@sheafbook/db';
import {
  containerKinds,
  containers,
  lineClosed,
  packingSessions,
  sealChecks,
  sealHolds,
} from '@sheafbook/db/tables';
import { and, asc, count, eq, isNull } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { inTheirOrder } from '../seam/use-cases.ts';

const isRunning = (storehouseId: string) =>
  and(eq(packingSessions.storehouseId, storehouseId), eq(packingSessions.stage, 'running'));

/** What the lines of the sessions that run have closed, in the order of its serials, without what was put back. */
export function listClosedNow(tx: Tx, storehouseId: string) {
  const { packingSessionId, line, serial, closedAt } = lineClosed;
  return tx
    .select({
      ...{ packingSessionId, line, serial, closedAt, sessionName: packingSessions.name },
      ...{ containerKindId: containers.containerKindId, kindCode: containerKinds.kindCode },
    })
    .from(lineClosed)
    .innerJoin(packingSessions, joinOn(packingSessions, lineClosed, 'packingSessionId'))
    .innerJoin(containers, joinOn(containers, lineClosed, 'containerId'))
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .where(and(isRunning(storehouseId), isNull(lineClosed.undoneEntryId)))
    .orderBy(asc(packingSessionId), asc(line), asc(serial));
}
export type ClosedNow = Awaited<ReturnType<typeof listClosedNow>>[number];

/** The checks of the sessions that run, in the order in which they were made. */
export async function listChecksNow(tx: Tx, storehouseId: string) {
  const rows = await tx
    .select({ check: sealChecks })
    .from(sealChecks)
    .innerJoin(packingSessions, joinOn(packingSessions, sealChecks, 'packingSessionId'))
    .where(isRunning(storehouseId))
    .orderBy(asc(sealChecks.sealCheckId));
  return inTheirOrder(rows.map(({ check }) => check));
}

/** The failed checks of which somebody must still say what becomes of the containers, with how many, oldest first. */
export function listUnanswered(tx: Tx, storehouseId: string) {
  const { sealCheckId, checkedAt, packingSessionId } = sealChecks;
  return tx
    .select({
      ...{ sealCheckId, checkedAt, packingSessionId, sessionName: packingSessions.name },
      containers: count(),
    })
    .from(sealHolds)
    .innerJoin(sealChecks, joinOn(sealChecks, sealHolds, 'sealCheckId'))
    .innerJoin(packingSessions, joinOn(packingSessions, sealChecks, 'packingSessionId'))
    .innerJoin(lineClosed, joinOn(lineClosed, sealHolds, 'containerId'))
    .where(
      and(
        eq(sealHolds.storehouseId, storehouseId),
        isNull(sealHolds.disposition),
        isNull(lineClosed.undoneEntryId),
      ),
    )
    .groupBy(sealCheckId, checkedAt, packingSessionId, packingSessions.name)
    .orderBy(asc(sealCheckId));
}
