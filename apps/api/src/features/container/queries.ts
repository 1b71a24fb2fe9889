import type { Tx } from '@sheafbook/db';
import {
  accounts,
  bags,
  buys,
  type ContainerRow,
  containerKinds,
  containers,
  entries,
  foods,
  held,
  lots,
  movements,
  offerContainers,
  reCans,
  vessels,
} from '@sheafbook/db/tables';
import type { Finding, Outcome } from '@sheafbook/keeping';
import { spellCode } from '@sheafbook/units';
import { and, eq, gt, inArray, isNull, lte, type SQL, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { refuseHeld } from '../hold/queries.ts';
import { type LastLook, listLastLooks } from '../keeping/queries.ts';

/** What a mass account holds now. */
export const gramsLeft = sql<number>`coalesce(${accounts.inflow} - ${accounts.outflow}, 0)`.mapWith(Number);

/** The account of what an owner has in a container: of a household in its own, where no other is named. */
const accountOf = (ownerId: string | typeof containers.householdId) =>
  and(
    eq(accounts.storehouseId, containers.storehouseId),
    eq(accounts.vesselId, containers.containerId),
    eq(accounts.ownerId, ownerId),
  );
export const ownAccount = accountOf(containers.householdId);

const shelfColumns = {
  container: containers,
  kind: containerKinds,
  food: foods,
  lot: lots,
  grams: gramsLeft,
  isHeld: sql<boolean>`exists (select from ${held} where ${held.storehouseId} = ${containers.storehouseId}
    and ${held.vesselId} = ${containers.containerId})`.mapWith(Boolean),
};

/** Containers with what they are and what is in them of this owner: the household's own, where no other is named. */
export function shelf(
  tx: Tx,
  storehouseId: string,
  ownerId: string | typeof containers.householdId = containers.householdId,
) {
  return tx
    .select(shelfColumns)
    .from(containers)
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .leftJoin(accounts, and(eq(accounts.storehouseId, storehouseId), accountOf(ownerId)));
}

/** A household's own containers, or those of them that are meant. */
const ownShelf = (tx: Tx, storehouseId: string, householdId: string, meant?: SQL) =>
  shelf(tx, storehouseId).where(
    and(eq(containers.storehouseId, storehouseId), eq(containers.householdId, householdId), meant),
  );

export type Shelved = Awaited<ReturnType<typeof listContainers>>[number];

/** One household's containers in the order of their codes' making, the empty ones too. */
export async function listContainers(
  tx: Tx,
  storehouseId: string,
  wish: { householdId: string; after?: string | undefined; limit: number },
) {
  const later = wish.after === undefined ? undefined : gt(containers.containerId, wish.after);
  return ownShelf(tx, storehouseId, wish.householdId, later)
    .orderBy(containers.containerId)
    .limit(wish.limit);
}

/** A container of this household; a neighbour's is not there. */
export async function loadContainer(
  tx: Tx,
  storehouseId: string,
  { householdId, containerId }: { householdId: string; containerId: string },
): Promise<Shelved> {
  const [row] = await ownShelf(tx, storehouseId, householdId, eq(containers.containerId, containerId));
  if (!row) throw new Problem('thing-not-found', { thing: 'container' });
  return row;
}

/** Alone with a container, so that two pours can't fill it past its brim together (ledger-notes 6.8). */
export const lockContainer = (tx: Tx, storehouseId: string, containerId: string): Promise<void> =>
  lockContainers(tx, storehouseId, [containerId]);

/** Alone with several, locked in a fixed order, so that two who want the same never wait for each other. */
export async function lockContainers(
  tx: Tx,
  storehouseId: string,
  containerIds: readonly string[],
): Promise<void> {
  await tx
    .select({ id: containers.containerId })
    .from(containers)
    .where(and(eq(containers.storehouseId, storehouseId), inArray(containers.containerId, [...containerIds])))
    .orderBy(containers.containerId)
    .for('update');
}

/** A bag with its food, and what this household owns in it. */
export async function loadBagOfOwner(
  tx: Tx,
  storehouseId: string,
  { bagId, ownerId }: { bagId: string; ownerId: string },
) {
  const [row] = await tx
    .select({ bag: bags, food: foods, ownGrams: gramsLeft })
    .from(bags)
    .innerJoin(lots, joinOn(lots, bags, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .leftJoin(
      accounts,
      and(
        eq(accounts.storehouseId, bags.storehouseId),
        eq(accounts.vesselId, bags.bagId),
        eq(accounts.ownerId, ownerId),
      ),
    )
    .where(and(eq(bags.storehouseId, storehouseId), eq(bags.bagId, bagId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'bag' });
  return row;
}

/** The bags in which this household owns grams, in the order of their making. */
export async function listBagsOfOwner(tx: Tx, storehouseId: string, ownerId: string) {
  return tx
    .select({ bag: bags, food: foods, buyName: buys.name, ownGrams: gramsLeft })
    .from(accounts)
    .innerJoin(bags, joinOn(bags, accounts, 'bagId', 'vesselId'))
    .innerJoin(lots, joinOn(lots, bags, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .innerJoin(buys, joinOn(buys, bags, 'buyId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.ownerId, ownerId),
        sql`${accounts.inflow} > ${accounts.outflow}`,
      ),
    )
    .orderBy(bags.bagId);
}
export type OwnBag = Awaited<ReturnType<typeof listBagsOfOwner>>[number];

export async function insertVessels(tx: Tx, rows: readonly (typeof vessels.$inferInsert)[]): Promise<void> {
  await tx.insert(vessels).values([...rows]);
}

export async function insertContainers(tx: Tx, rows: readonly (typeof containers.$inferInsert)[]) {
  return tx
    .insert(containers)
    .values([...rows])
    .returning();
}

/** The containers that an entry of this household poured into, with what went in and what is in them now. */
export async function listPoured(
  tx: Tx,
  storehouseId: string,
  { entryId, householdId }: { entryId: string; householdId: string },
) {
  return tx
    .select({
      containerId: containers.containerId,
      containerCode: containers.containerCode,
      pouredGrams: movements.amount,
      grams: gramsLeft,
      buyId: entries.buyId,
      isUndone: sql<boolean>`exists (select from book.entry later
        where later.storehouse_id = ${entries.storehouseId} and later.reverses_id = ${entries.entryId})`,
    })
    .from(entries)
    .innerJoin(movements, joinOn(movements, entries, 'entryId'))
    .innerJoin(accounts, joinOn(accounts, movements, 'accountId', 'destinationId'))
    .innerJoin(containers, joinOn(containers, accounts, 'containerId', 'vesselId'))
    .where(
      and(
        eq(entries.storehouseId, storehouseId),
        eq(entries.entryId, entryId),
        eq(entries.what, 'poured'),
        eq(accounts.ownerId, householdId),
      ),
    );
}

/** Refuses a container that is on hold, or whose seam or seal is in doubt. */
export const refuseInDoubt = (tx: Tx, storehouseId: string, containerId: string): Promise<void> =>
  refuseHeld(tx, storehouseId, [containerId]);

/** What the last look at a container found, and what it made of the food in it. */
export type FoundLast = Pick<LastLook, 'findings' | 'outcome'>;

/**
 * What the last look at each of some containers found, for whoever gives these away: also what a household found that handed
 * its own over, before or since. It tells what was found, and not who did.
 */
export async function listFoundForGiving(
  tx: Tx,
  storehouseId: string,
  containerIds: readonly string[],
): Promise<Map<string, FoundLast>> {
  const rows = await tx.execute<{ container_id: string; findings: Finding[]; outcome: Outcome }>(sql`
    select * from book.list_found_for_giving(${storehouseId}, ${sql.param([...containerIds])}::uuid[])`);
  return new Map(rows.map(({ container_id: id, findings, outcome }) => [id, { findings, outcome }]));
}

/** What the last look at a container made of the food in it. */
export async function findOutcome(tx: Tx, storehouseId: string, containerId: string) {
  return (await listLastLooks(tx, storehouseId, [containerId])).get(containerId)?.outcome;
}

/** What members are being offered at a moment. */
export const isOfferedAt = (now: Date) =>
  and(
    lte(offerContainers.offeredAt, now),
    gt(offerContainers.closesAt, now),
    isNull(offerContainers.endedAt),
  );

/** Refuses containers that stand in an offer: whoever wants them back takes the offer back first. */
export async function refuseOffered(
  tx: Tx,
  storehouseId: string,
  { containerIds, now }: { containerIds: readonly string[]; now: Date },
): Promise<void> {
  const offered = await tx
    .select({ code: containers.containerCode })
    .from(offerContainers)
    .innerJoin(containers, joinOn(containers, offerContainers, 'containerId'))
    .where(
      and(
        eq(offerContainers.storehouseId, storehouseId),
        inArray(offerContainers.containerId, [...containerIds]),
        isOfferedAt(now),
      ),
    )
    .orderBy(containers.containerCode);
  if (offered.length > 0)
    throw new Problem('container-offered', { containers: offered.map(({ code }) => code) });
}

/** Refuses a container whose code has ended, since what was in it stands in a new one. */
export async function refuseEnded(tx: Tx, storehouseId: string, containerId: string): Promise<void> {
  const [row] = await tx
    .select({ id: reCans.reCanId })
    .from(reCans)
    .where(
      and(
        eq(reCans.storehouseId, storehouseId),
        eq(reCans.oldContainerId, containerId),
        isNull(reCans.undoneEntryId),
      ),
    );
  if (row) throw new Problem('container-ended');
}

/**
 * Refuses an empty container if all that ever went into it was taken back: its label was thrown away, and what that says was
 * said of that pour. One that was emptied by eating is filled anew, and one that waits for its first pour may have it.
 */
export async function refuseSpent(tx: Tx, { storehouseId, containerId, containerCode }: ContainerRow) {
  const [row] = await tx.execute<{ went_in: boolean; is_in: boolean }>(sql`
    select count(*) > 0 as went_in, coalesce(bool_or(not exists (select from book.entry later
        where later.storehouse_id = e.storehouse_id and later.reverses_id = e.entry_id)), false) as is_in
    from book.account a
    join book.movement m on m.storehouse_id = a.storehouse_id and m.destination_id = a.account_id
    join book.entry e on e.storehouse_id = m.storehouse_id and e.entry_id = m.entry_id
    where a.storehouse_id = ${storehouseId} and a.vessel_id = ${containerId} and e.reverses_id is null`);
  if (!row?.went_in || row.is_in) return;
  throw new Problem('label-used', {
    detail: `What was poured into ${spellCode(containerCode)} was taken back, so its label is spent. Throw the label away and fill a new container.`,
  });
}

export async function updateTreatment(
  tx: Tx,
  { storehouseId, containerId }: ContainerRow,
  change: { treatment: string | null; moistureTenths: number | null; packedOn?: string },
): Promise<void> {
  await tx
    .update(containers)
    .set(change)
    .where(and(eq(containers.storehouseId, storehouseId), eq(containers.containerId, containerId)));
}

export const markOpened = (tx: Tx, container: ContainerRow, openedOn: string): Promise<void> =>
  updateOpenedOn(tx, container, openedOn);

/** A container that turned out not to have been opened. */
export const markShut = (tx: Tx, container: ContainerRow): Promise<void> =>
  updateOpenedOn(tx, container, null);

async function updateOpenedOn(tx: Tx, container: ContainerRow, openedOn: string | null): Promise<void> {
  await tx
    .update(containers)
    .set({ openedOn })
    .where(
      and(
        eq(containers.storehouseId, container.storehouseId),
        eq(containers.containerId, container.containerId),
      ),
    );
}
