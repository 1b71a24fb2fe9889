import type { Tx } from '@sheafbook/db';
import { type ContainerTareRow, containerKinds, containerTares, persons } from '@sheafbook/db/tables';
import { and, asc, desc, eq } from 'drizzle-orm';
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

/** Every weighing of a kind, the last one first. */
export async function listTaresOfKind(
  tx: Tx,
  storehouseId: string,
  kindId: string,
): Promise<ContainerTareRow[]> {
  return tx
    .select()
    .from(containerTares)
    .where(and(eq(containerTares.storehouseId, storehouseId), eq(containerTares.containerKindId, kindId)))
    .orderBy(
      desc(containerTares.weighedAt),
      desc(containerTares.recordedAt),
      desc(containerTares.containerTareId),
    );
}
