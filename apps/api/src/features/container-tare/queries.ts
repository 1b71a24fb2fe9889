import type { Tx } from '@sheafbook/db';
import { containerKinds, containerTares, persons } from '@sheafbook/db/tables';
import { asc, desc, eq } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

export async function insertTare(tx: Tx, row: typeof containerTares.$inferInsert): Promise<void> {
  await tx.insert(containerTares).values(row);
}

/** The last weighing of each kind that anybody weighed, by the kind's code. */
export async function listLastTares(tx: Tx, storehouseId: string) {
  return tx
    .selectDistinctOn([containerKinds.kindCode], {
      tare: containerTares,
      kind: containerKinds,
      weighedBy: persons.name,
    })
    .from(containerTares)
    .innerJoin(containerKinds, joinOn(containerKinds, containerTares, 'containerKindId'))
    .innerJoin(persons, joinOn(persons, containerTares, 'personId', 'weighedBy'))
    .where(eq(containerTares.storehouseId, storehouseId))
    .orderBy(
      asc(containerKinds.kindCode),
      desc(containerTares.weighedAt),
      desc(containerTares.recordedAt),
      desc(containerTares.containerTareId),
    );
}
export type LastTare = Awaited<ReturnType<typeof listLastTares>>[number];
