import type { Tx } from '@sheafbook/db';
import {
  type BagRow,
  bags,
  deliveries,
  dutyGrants,
  foods,
  type HoldRow,
  holds,
  lots,
  packingSessions,
  persons,
  places,
  suppliers,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, gt, inArray, isNull, sql } from 'drizzle-orm';
import type { PgColumn } from 'drizzle-orm/pg-core';
import type { Duty } from '../../platform/actor.ts';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

export { endHoldsOfEmpty, endHoldsWithNothing, listHoldsOfKitchen } from './queries-reach.ts';
export { listHeld, refuseHeld } from './refuse-held.ts';

const isThis = (storehouseId: string, holdId: string) =>
  and(eq(holds.storehouseId, storehouseId), eq(holds.holdId, holdId));

/** The holds that stand on these bags alone, and not on more with them. */
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

/** What a hold is on, as far as its scope names it: a bag, a lot and its food, a session, a delivery, a supplier, a place. */
const seenColumns = {
  hold: holds,
  bag: bags,
  lot: lots,
  food: foods,
  supplier: { supplierId: suppliers.supplierId, name: suppliers.name },
  delivery: deliveries,
  session: { packingSessionId: packingSessions.packingSessionId, name: packingSessions.name },
  place: { placeId: places.placeId, name: places.name },
  vessels: sql`(select count(*) from book.hold_vessel v where v.storehouse_id = ${holds.storehouseId}
    and v.hold_id = ${holds.holdId})`.mapWith(Number),
  grams: sql`(select coalesce(sum(a.inflow - a.outflow), 0) from book.hold_vessel v
    join book.account a on a.storehouse_id = v.storehouse_id and a.vessel_id = v.vessel_id
    where v.storehouse_id = ${holds.storehouseId} and v.hold_id = ${holds.holdId} and v.ended_at is null)`.mapWith(
    Number,
  ),
};

function seen(tx: Tx) {
  return tx
    .select(seenColumns)
    .from(holds)
    .leftJoin(bags, joinOn(bags, holds, 'bagId'))
    .leftJoin(
      lots,
      and(
        eq(lots.storehouseId, holds.storehouseId),
        sql`${lots.lotId} = coalesce(${holds.lotId}, ${bags.lotId})`,
      ),
    )
    .leftJoin(
      foods,
      and(
        eq(foods.storehouseId, holds.storehouseId),
        sql`${foods.foodId} = coalesce(${holds.foodId}, ${lots.foodId})`,
      ),
    )
    .leftJoin(deliveries, joinOn(deliveries, holds, 'deliveryId'))
    .leftJoin(
      suppliers,
      and(
        eq(suppliers.storehouseId, holds.storehouseId),
        sql`${suppliers.supplierId} = coalesce(${holds.supplierId}, ${deliveries.supplierId}, ${lots.supplierId})`,
      ),
    )
    .leftJoin(packingSessions, joinOn(packingSessions, holds, 'packingSessionId'))
    .leftJoin(places, joinOn(places, holds, 'placeId'));
}

export type SeenHold = Awaited<ReturnType<typeof loadHold>>;

/** One hold with what it is on. */
export async function loadHold(tx: Tx, storehouseId: string, holdId: string) {
  const [row] = await seen(tx).where(isThis(storehouseId, holdId));
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
): Promise<SeenHold[]> {
  const { after, limit, isOpen = false, buyId } = page;
  return seen(tx)
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

const SCOPE_FIELDS = [
  'scope',
  'bagId',
  'lotId',
  'packingSessionId',
  'line',
  'fromSerial',
  'toSerial',
  'deliveryId',
  'supplierId',
  'supplierMark',
  'foodId',
  'fromOn',
  'toOn',
  'placeId',
] as const;

/** What a hold is on, by the columns of its row; what is left out is null. */
export type Scope = Pick<typeof holds.$inferInsert, Exclude<(typeof SCOPE_FIELDS)[number], 'bagId'>> & {
  readonly bagId?: string;
};

/** A standing hold of the very same scope, if there is one. */
export async function findSameHold(tx: Tx, storehouseId: string, of: Scope): Promise<HoldRow | undefined> {
  const same = SCOPE_FIELDS.map((field) => {
    const value = of[field];
    const column: PgColumn = holds[field];
    return value === undefined || value === null ? isNull(column) : eq(column, value);
  });
  const [row] = await tx
    .select()
    .from(holds)
    .where(and(eq(holds.storehouseId, storehouseId), isNull(holds.releasedAt), ...same))
    .limit(1);
  return row;
}
