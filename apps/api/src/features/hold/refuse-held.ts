import type { Tx } from '@sheafbook/db';
import { bags, containers, held } from '@sheafbook/db/tables';
import { spellCode } from '@sheafbook/units';
import { and, asc, eq, inArray } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

/**
 * Refuses when one of these bags or containers is on hold, or its seam or seal is in doubt. They are share-locked, in a
 * fixed order, so that nobody can put one on hold between this check and whatever leaves it in the same transaction. For
 * everything that eats, pours, splits, fetches, offers, gives or lends; moving to another place and throwing away need not
 * ask. `post_entry` refuses the same, whoever forgot to ask.
 */
export async function refuseHeld(tx: Tx, storehouseId: string, vesselIds: readonly string[]): Promise<void> {
  const ids = [...vesselIds];
  if (ids.length === 0) return;
  await lockBags(tx, storehouseId, ids);
  await lockContainers(tx, storehouseId, ids);
  const found = await listHeld(tx, storehouseId, ids);
  if (found.length === 0) return;
  const heldBags = found.flatMap(({ bag, reason }) => (bag ? [{ ...bag, reason }] : []));
  if (heldBags.length > 0) throw new Problem('bag-on-hold', { bags: heldBags });
  const heldContainers = found.flatMap(({ containerId, code, holdId, reason }) =>
    containerId !== null && code !== null && holdId !== null ? [{ containerId, code, reason }] : [],
  );
  if (heldContainers.length === 0) throw new Problem('container-in-doubt');
  const codes = [...new Set(heldContainers.map(({ code }) => spellCode(code)))];
  throw new Problem('on-hold', {
    detail: `On hold: ${codes.join(', ')}. It is neither eaten, opened, given nor lent until it is released.`,
    containers: heldContainers,
  });
}

async function lockBags(tx: Tx, storehouseId: string, ids: readonly string[]): Promise<void> {
  await tx
    .select({ id: bags.bagId })
    .from(bags)
    .where(and(eq(bags.storehouseId, storehouseId), inArray(bags.bagId, [...ids])))
    .orderBy(bags.bagId)
    .for('share');
}

async function lockContainers(tx: Tx, storehouseId: string, ids: readonly string[]): Promise<void> {
  await tx
    .select({ id: containers.containerId })
    .from(containers)
    .where(and(eq(containers.storehouseId, storehouseId), inArray(containers.containerId, [...ids])))
    .orderBy(containers.containerId)
    .for('share');
}

/** What of these vessels may not move, once for each hold on it; a seam or seal in doubt has no hold. */
export function listHeld(tx: Tx, storehouseId: string, vesselIds: readonly string[]) {
  return tx
    .select({
      ...{ vesselId: held.vesselId, holdId: held.holdId, reason: held.reason },
      bag: { bagId: bags.bagId, bagCode: bags.bagCode, bagNo: bags.bagNo },
      containerId: containers.containerId,
      code: containers.containerCode,
    })
    .from(held)
    .leftJoin(bags, joinOn(bags, held, 'bagId', 'vesselId'))
    .leftJoin(containers, joinOn(containers, held, 'containerId', 'vesselId'))
    .where(and(eq(held.storehouseId, storehouseId), inArray(held.vesselId, [...vesselIds])))
    .orderBy(asc(bags.bagNo), asc(containers.containerCode));
}
