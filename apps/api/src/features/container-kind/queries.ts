import type { Tx } from '@sheafbook/db';
import { type ContainerKindRow, containerKinds } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, gt } from 'drizzle-orm';
import type { PageQuery } from '../../platform/paging.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, kindId: string) =>
  and(eq(containerKinds.storehouseId, storehouseId), eq(containerKinds.containerKindId, kindId));

/** One row more than the page holds, so that the caller knows whether another page follows. */
export async function listContainerKinds(
  tx: Tx,
  storehouseId: string,
  { after, limit }: PageQuery,
): Promise<ContainerKindRow[]> {
  return tx
    .select()
    .from(containerKinds)
    .where(
      and(
        eq(containerKinds.storehouseId, storehouseId),
        after === undefined ? undefined : gt(containerKinds.kindCode, after),
      ),
    )
    .orderBy(asc(containerKinds.kindCode))
    .limit(limit + 1);
}

/** All of them, for what is judged over the whole catalogue. */
export async function listAllContainerKinds(tx: Tx, storehouseId: string): Promise<ContainerKindRow[]> {
  return tx
    .select()
    .from(containerKinds)
    .where(eq(containerKinds.storehouseId, storehouseId))
    .orderBy(asc(containerKinds.kindCode));
}

export async function loadContainerKind(
  tx: Tx,
  storehouseId: string,
  kindId: string,
): Promise<ContainerKindRow> {
  return found(await tx.select().from(containerKinds).where(isThis(storehouseId, kindId)));
}

export async function lockContainerKind(
  tx: Tx,
  storehouseId: string,
  kindId: string,
): Promise<ContainerKindRow> {
  return found(await tx.select().from(containerKinds).where(isThis(storehouseId, kindId)).for('update'));
}

function found([kind]: ContainerKindRow[]): ContainerKindRow {
  if (!kind) throw new Problem('thing-not-found', { thing: 'container kind' });
  return kind;
}

export async function findContainerKindByCode(tx: Tx, storehouseId: string, kindCode: string) {
  const [kind] = await tx
    .select()
    .from(containerKinds)
    .where(and(eq(containerKinds.storehouseId, storehouseId), eq(containerKinds.kindCode, kindCode)));
  return kind;
}

export async function insertContainerKind(
  tx: Tx,
  kind: typeof containerKinds.$inferInsert,
): Promise<ContainerKindRow> {
  const [row] = await tx.insert(containerKinds).values(kind).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function updateContainerKind(
  tx: Tx,
  kind: ContainerKindRow,
  change: Partial<typeof containerKinds.$inferInsert>,
): Promise<ContainerKindRow> {
  const [row] = await tx
    .update(containerKinds)
    .set({ ...change, version: kind.version + 1 })
    .where(isThis(kind.storehouseId, kind.containerKindId))
    .returning();
  assert(row, 'the container kind was locked before');
  return row;
}
