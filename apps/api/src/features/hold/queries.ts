import type { Tx } from '@sheafbook/db';
import { type BagRow, bags, dutyGrants, type HoldRow, holds, persons } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, gt, inArray, isNull } from 'drizzle-orm';
import type { Duty } from '../../platform/actor.ts';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, holdId: string) =>
  and(eq(holds.storehouseId, storehouseId), eq(holds.holdId, holdId));

/**
 * Refuses when one of these bags is on hold. The bags are share-locked, in a fixed order, so that nobody can put one
 * on hold between this check and whatever leaves it in the same transaction.
 */
export async function refuseIfHeld(tx: Tx, storehouseId: string, bagIds: readonly string[]): Promise<void> {
  await lockBags(tx, storehouseId, bagIds);
  const held = await listOpenHolds(tx, storehouseId, bagIds);
  if (held.length === 0) return;
  throw new Problem('bag-on-hold', {
    bags: held.map(({ hold, bag }) => ({
      bagId: bag.bagId,
      bagCode: bag.bagCode,
      bagNo: bag.bagNo,
      reason: hold.reason,
    })),
  });
}

async function lockBags(tx: Tx, storehouseId: string, bagIds: readonly string[]): Promise<void> {
  await tx
    .select({ bagId: bags.bagId })
    .from(bags)
    .where(and(eq(bags.storehouseId, storehouseId), inArray(bags.bagId, [...bagIds])))
    .orderBy(bags.bagId)
    .for('share');
}

/** The holds of these bags that still stand. */
export async function listOpenHolds(tx: Tx, storehouseId: string, bagIds: readonly string[]) {
  return tx
    .select({ hold: holds, bag: bags })
    .from(holds)
    .innerJoin(bags, joinOn(bags, holds, 'bagId'))
    .where(
      and(eq(holds.storehouseId, storehouseId), inArray(holds.bagId, [...bagIds]), isNull(holds.releasedAt)),
    )
    .orderBy(bags.bagNo);
}

/** Alone with a bag: while its row is locked so, nothing can leave it and no other hold begin. */
export async function lockBagToHold(tx: Tx, storehouseId: string, bagId: string): Promise<BagRow> {
  const [row] = await tx
    .select()
    .from(bags)
    .where(and(eq(bags.storehouseId, storehouseId), eq(bags.bagId, bagId)))
    .for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'bag' });
  return row;
}

export async function findBuyOfBag(tx: Tx, storehouseId: string, bagId: string): Promise<string> {
  const [row] = await tx
    .select({ buyId: bags.buyId })
    .from(bags)
    .where(and(eq(bags.storehouseId, storehouseId), eq(bags.bagId, bagId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'bag' });
  return row.buyId;
}

export async function insertHold(tx: Tx, hold: typeof holds.$inferInsert): Promise<HoldRow> {
  const [row] = await tx.insert(holds).values(hold).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function lockHold(tx: Tx, storehouseId: string, holdId: string): Promise<HoldRow> {
  const [row] = await tx.select().from(holds).where(isThis(storehouseId, holdId)).for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'hold' });
  return row;
}

export async function updateHold(
  tx: Tx,
  hold: HoldRow,
  set: Pick<Partial<HoldRow>, 'finding' | 'releaseAskedBy' | 'releasedBy' | 'releasedAt'>,
): Promise<HoldRow> {
  const [row] = await tx.update(holds).set(set).where(isThis(hold.storehouseId, hold.holdId)).returning();
  assert(row, 'the hold was locked before');
  return row;
}

/**
 * Ends the open hold of a bag that has nothing left to hold, since it was thrown away or went back. Nobody releases
 * it: `released_by` stays empty, and nothing of it may ever be used.
 */
export async function endHoldOfEmptyBag(
  tx: Tx,
  bag: { storehouseId: string; bagId: string },
  end: { finding: string; at: Date },
): Promise<void> {
  await tx
    .update(holds)
    .set({ finding: end.finding, releasedAt: end.at })
    .where(
      and(eq(holds.storehouseId, bag.storehouseId), eq(holds.bagId, bag.bagId), isNull(holds.releasedAt)),
    );
}

export async function listDutiesOf(tx: Tx, storehouseId: string, personId: string): Promise<Set<Duty>> {
  const rows = await tx
    .select({ duty: dutyGrants.duty })
    .from(dutyGrants)
    .innerJoin(persons, joinOn(persons, dutyGrants, 'personId'))
    .where(
      and(
        eq(dutyGrants.storehouseId, storehouseId),
        eq(dutyGrants.personId, personId),
        isNull(dutyGrants.endedAt),
        isNull(persons.leftOn),
      ),
    );
  return new Set(rows.map((row) => row.duty as Duty));
}

export type HoldOfBag = { readonly hold: HoldRow; readonly bag: BagRow };

/** One hold with its bag. */
export async function loadHold(tx: Tx, storehouseId: string, holdId: string): Promise<HoldOfBag> {
  const [row] = await tx
    .select({ hold: holds, bag: bags })
    .from(holds)
    .innerJoin(bags, joinOn(bags, holds, 'bagId'))
    .where(isThis(storehouseId, holdId));
  if (!row) throw new Problem('thing-not-found', { thing: 'hold' });
  return row;
}

/** Every hold there was, oldest first, or those that still stand. */
export async function listHolds(
  tx: Tx,
  storehouseId: string,
  page: {
    after?: string | undefined;
    limit: number;
    isOpen?: boolean | undefined;
    buyId?: string | undefined;
  },
): Promise<HoldOfBag[]> {
  const { after, limit, isOpen = false, buyId } = page;
  return tx
    .select({ hold: holds, bag: bags })
    .from(holds)
    .innerJoin(bags, joinOn(bags, holds, 'bagId'))
    .where(
      and(
        eq(holds.storehouseId, storehouseId),
        after === undefined ? undefined : gt(holds.holdId, after),
        isOpen ? isNull(holds.releasedAt) : undefined,
        buyId === undefined ? undefined : eq(bags.buyId, buyId),
      ),
    )
    .orderBy(holds.holdId)
    .limit(limit);
}
