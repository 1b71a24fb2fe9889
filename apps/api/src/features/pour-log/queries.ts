import type { Tx } from '@sheafbook/db';
import {
  type AbsorberPackRow,
  absorberPacks,
  accounts,
  bags,
  containerKinds,
  containers,
  entries,
  type FoodRow,
  foods,
  households,
  lineClosed,
  lots,
  movements,
  type PackingBagRow,
  packingBags,
  packingLosses,
  packingPours,
  packingWishes,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, inArray, isNull, lt, notExists, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { gramsLeft } from '../container/queries.ts';

const later = alias(entries, 'later');

const ofSession = (storehouseId: string, sessionId: string) =>
  and(eq(packingBags.storehouseId, storehouseId), eq(packingBags.packingSessionId, sessionId));

/** The bags at a session by household and bag, with what the book says is still in them. */
export async function listBroughtBags(tx: Tx, storehouseId: string, sessionId: string) {
  return tx
    .select({
      brought: packingBags,
      bag: bags,
      food: foods,
      household: households,
      bookGrams: gramsLeft,
    })
    .from(packingBags)
    .innerJoin(bags, joinOn(bags, packingBags, 'bagId'))
    .innerJoin(lots, joinOn(lots, bags, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .innerJoin(households, joinOn(households, packingBags, 'householdId'))
    .leftJoin(
      accounts,
      and(
        eq(accounts.storehouseId, packingBags.storehouseId),
        eq(accounts.vesselId, packingBags.bagId),
        eq(accounts.ownerId, packingBags.householdId),
      ),
    )
    .where(ofSession(storehouseId, sessionId))
    .orderBy(asc(households.seat), asc(bags.bagNo));
}
export type BroughtBag = Awaited<ReturnType<typeof listBroughtBags>>[number];

/** What households that want a food packed own of it in bags: what may come to the line. */
export async function listBringable(tx: Tx, storehouseId: string, sessionId: string) {
  return tx
    .selectDistinct({
      bag: bags,
      food: foods,
      household: households,
      grams: gramsLeft,
    })
    .from(packingWishes)
    .innerJoin(households, joinOn(households, packingWishes, 'householdId'))
    .innerJoin(foods, joinOn(foods, packingWishes, 'foodId'))
    .innerJoin(lots, joinOn(lots, foods, 'foodId'))
    .innerJoin(bags, joinOn(bags, lots, 'lotId'))
    .innerJoin(
      accounts,
      and(
        eq(accounts.storehouseId, bags.storehouseId),
        eq(accounts.vesselId, bags.bagId),
        eq(accounts.ownerId, packingWishes.householdId),
      ),
    )
    .where(
      and(
        eq(packingWishes.storehouseId, storehouseId),
        eq(packingWishes.packingSessionId, sessionId),
        sql`${accounts.inflow} > ${accounts.outflow}`,
      ),
    )
    .orderBy(asc(households.seat), asc(bags.bagNo));
}
export type Bringable = Awaited<ReturnType<typeof listBringable>>[number];

type OneBag = { sessionId: string; bagId: string; householdId: string };

export async function lockBroughtBag(tx: Tx, storehouseId: string, one: OneBag): Promise<PackingBagRow> {
  const [row] = await tx
    .select()
    .from(packingBags)
    .where(
      and(
        ofSession(storehouseId, one.sessionId),
        eq(packingBags.bagId, one.bagId),
        eq(packingBags.householdId, one.householdId),
      ),
    )
    .for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'bag at this session' });
  return row;
}

export async function insertBroughtBag(tx: Tx, row: typeof packingBags.$inferInsert): Promise<boolean> {
  const rows = await tx.insert(packingBags).values(row).onConflictDoNothing().returning();
  return rows.length > 0;
}

export async function updateLeft(
  tx: Tx,
  row: PackingBagRow,
  left: Pick<PackingBagRow, 'leftGrams' | 'differenceBecause' | 'wasTenths' | 'isTenths'>,
): Promise<void> {
  await tx
    .update(packingBags)
    .set(left)
    .where(
      and(
        ofSession(row.storehouseId, row.packingSessionId),
        eq(packingBags.bagId, row.bagId),
        eq(packingBags.householdId, row.householdId),
      ),
    );
}

const poursOf = (storehouseId: string, sessionId: string) =>
  and(eq(packingPours.storehouseId, storehouseId), eq(packingPours.packingSessionId, sessionId));

/** The pours of a session by line and serial, those that were undone too. */
export async function listPours(tx: Tx, storehouseId: string, sessionId: string) {
  return tx
    .select({
      pour: packingPours,
      container: containers,
      kind: containerKinds,
      food: foods,
      household: households,
    })
    .from(packingPours)
    .innerJoin(containers, joinOn(containers, packingPours, 'containerId'))
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .innerJoin(households, joinOn(households, packingPours, 'householdId'))
    .where(poursOf(storehouseId, sessionId))
    .orderBy(asc(packingPours.line), asc(packingPours.serial));
}
export type LoggedPour = Awaited<ReturnType<typeof listPours>>[number];

/** The last serial of a line, poured or filled anew; the session is locked by whoever asks. */
export async function lastSerial(
  tx: Tx,
  storehouseId: string,
  { sessionId, line }: { sessionId: string; line: number },
): Promise<number> {
  const [row] = await tx
    .select({ serial: lineClosed.serial })
    .from(lineClosed)
    .where(
      and(
        eq(lineClosed.storehouseId, storehouseId),
        eq(lineClosed.packingSessionId, sessionId),
        eq(lineClosed.line, line),
      ),
    )
    .orderBy(desc(lineClosed.serial))
    .limit(1);
  return row?.serial ?? 0;
}

/**
 * What a container's line ran before it that day, each food once; nothing where no line closed it. One that was filled anew
 * ran when it was closed for the second time.
 */
export async function listRanBefore(tx: Tx, storehouseId: string, containerId: string): Promise<FoodRow[]> {
  const own = tx
    .select({ sessionId: lineClosed.packingSessionId, line: lineClosed.line, serial: lineClosed.serial })
    .from(lineClosed)
    .where(and(eq(lineClosed.storehouseId, storehouseId), eq(lineClosed.containerId, containerId)))
    .as('own');
  const rows = await tx
    .selectDistinctOn([foods.foodId], { food: foods })
    .from(own)
    .innerJoin(
      lineClosed,
      and(
        eq(lineClosed.storehouseId, storehouseId),
        eq(lineClosed.packingSessionId, own.sessionId),
        eq(lineClosed.line, own.line),
        lt(lineClosed.serial, own.serial),
        isNull(lineClosed.undoneEntryId),
      ),
    )
    .innerJoin(containers, joinOn(containers, lineClosed, 'containerId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .orderBy(foods.foodId);
  return rows.map(({ food }) => food);
}

export async function insertPours(
  tx: Tx,
  rows: readonly (typeof packingPours.$inferInsert)[],
): Promise<void> {
  await tx.insert(packingPours).values([...rows]);
}

/** What an entry poured at a session, with what is in the containers now. */
export async function listPoursOfEntry(tx: Tx, storehouseId: string, entryId: string) {
  return tx
    .select({
      pour: packingPours,
      code: containers.containerCode,
      grams: gramsLeft,
    })
    .from(packingPours)
    .innerJoin(containers, joinOn(containers, packingPours, 'containerId'))
    .leftJoin(
      accounts,
      and(
        eq(accounts.storehouseId, packingPours.storehouseId),
        eq(accounts.vesselId, packingPours.containerId),
        eq(accounts.ownerId, packingPours.householdId),
      ),
    )
    .where(and(eq(packingPours.storehouseId, storehouseId), eq(packingPours.entryId, entryId)));
}

export async function markUndone(
  tx: Tx,
  storehouseId: string,
  { entryId, undoneEntryId }: { entryId: string; undoneEntryId: string },
): Promise<void> {
  await tx
    .update(packingPours)
    .set({ undoneEntryId })
    .where(and(eq(packingPours.storehouseId, storehouseId), eq(packingPours.entryId, entryId)));
}

export async function insertLoss(tx: Tx, row: typeof packingLosses.$inferInsert): Promise<void> {
  await tx.insert(packingLosses).values(row);
}

/** What a session spilled and took as samples, in the order in which it happened, less what was taken back. */
export async function listLosses(tx: Tx, storehouseId: string, sessionId: string) {
  const rows = await tx
    .select({ loss: packingLosses, kind: accounts.vesselKind, grams: movements.amount })
    .from(packingLosses)
    .innerJoin(movements, joinOn(movements, packingLosses, 'entryId'))
    .innerJoin(
      accounts,
      and(
        eq(accounts.storehouseId, movements.storehouseId),
        eq(accounts.accountId, movements.destinationId),
        inArray(accounts.vesselKind, ['spilled', 'sampled']),
      ),
    )
    .where(
      and(
        eq(packingLosses.storehouseId, storehouseId),
        eq(packingLosses.packingSessionId, sessionId),
        notExists(
          tx
            .select({ one: sql`1` })
            .from(later)
            .where(and(eq(later.storehouseId, storehouseId), eq(later.reversesId, packingLosses.entryId))),
        ),
      ),
    )
    .orderBy(asc(packingLosses.lostAt), asc(packingLosses.entryId));
  return rows.map(({ loss, kind, grams }) => ({ ...loss, kind: kind ?? '', grams }));
}

export async function listPacks(tx: Tx, storehouseId: string, sessionId: string): Promise<AbsorberPackRow[]> {
  return tx
    .select()
    .from(absorberPacks)
    .where(and(eq(absorberPacks.storehouseId, storehouseId), eq(absorberPacks.packingSessionId, sessionId)))
    .orderBy(asc(absorberPacks.openedAt));
}

export async function insertPack(tx: Tx, row: typeof absorberPacks.$inferInsert): Promise<AbsorberPackRow> {
  const [pack] = await tx.insert(absorberPacks).values(row).returning();
  assert(pack, 'an insert returns its row');
  return pack;
}

/** Shuts a pack that stands open; undefined when there is none. */
export async function shutPack(
  tx: Tx,
  storehouseId: string,
  shut: { packId: string; sessionId: string; shutAt: Date; packetsLeft: number },
): Promise<AbsorberPackRow | undefined> {
  const [pack] = await tx
    .update(absorberPacks)
    .set({ shutAt: shut.shutAt, packetsLeft: shut.packetsLeft })
    .where(
      and(
        eq(absorberPacks.storehouseId, storehouseId),
        eq(absorberPacks.packingSessionId, shut.sessionId),
        eq(absorberPacks.absorberPackId, shut.packId),
        isNull(absorberPacks.shutAt),
      ),
    )
    .returning();
  return pack;
}
