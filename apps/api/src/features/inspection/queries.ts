import type { Tx } from '@sheafbook/db';
import {
  accounts,
  containerKinds,
  containers,
  foods,
  type InspectionRow,
  inspections,
  lineClosed,
  lots,
  smallTests,
  watches,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq, gt, isNull, or, type SQL, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

/** Of a household, or with null of the common stock. */
const isOf = (householdId: string | null) =>
  householdId === null ? isNull(containers.householdId) : eq(containers.householdId, householdId);

const gramsNow =
  sql<number>`(select coalesce(sum(${accounts.inflow} - ${accounts.outflow}), 0) from ${accounts}
  where ${accounts.storehouseId} = ${containers.storehouseId} and ${accounts.vesselId} = ${containers.containerId})`.mapWith(
    Number,
  );

const lastOn = sql<string | null>`(select max(l.inspected_on)::text
  from book.list_looks(${containers.storehouseId}, array[${containers.containerId}]) l)`;

const lookedColumns = {
  container: containers,
  kind: containerKinds,
  food: foods,
  lot: lots,
  grams: gramsNow,
  lastOn,
};

/** Containers of the storehouse that fit a condition, by code. */
async function listStock(tx: Tx, storehouseId: string, condition: SQL | undefined) {
  return tx
    .select(lookedColumns)
    .from(containers)
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .where(and(eq(containers.storehouseId, storehouseId), condition))
    .orderBy(containers.containerCode);
}
export type Looked = Awaited<ReturnType<typeof listStock>>[number];

/** A container, whoever has it; the caller decides who may look at it. */
export async function loadLooked(tx: Tx, storehouseId: string, containerId: string): Promise<Looked> {
  const [row] = await listStock(tx, storehouseId, eq(containers.containerId, containerId));
  if (!row) throw new Problem('thing-not-found', { thing: 'container' });
  return row;
}

/** What a household, or with null the common stock, has that is not empty, by code. */
export async function listLooked(
  tx: Tx,
  storehouseId: string,
  householdId: string | null,
): Promise<Looked[]> {
  return listStock(tx, storehouseId, and(isOf(householdId), gt(gramsNow, 0)));
}

/** Who owns the grams in a container. */
export async function listOwnersIn(tx: Tx, storehouseId: string, containerId: string) {
  const grams = sql<number>`${accounts.inflow} - ${accounts.outflow}`.mapWith(Number);
  const rows = await tx
    .select({ ownerId: accounts.ownerId, grams })
    .from(accounts)
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.vesselId, containerId),
        gt(accounts.inflow, accounts.outflow),
      ),
    )
    .orderBy(accounts.ownerId);
  return rows.map(({ ownerId, grams: owned }) => {
    assert(ownerId !== null, 'grams in a container are somebody’s');
    return { ownerId, grams: owned };
  });
}

/** The packing day on which a line closed each container, also one that was filled anew there. */
const sessionOf = (tx: Tx, storehouseId: string) =>
  tx
    .select({ containerId: lineClosed.containerId, sessionId: lineClosed.packingSessionId })
    .from(lineClosed)
    .where(and(eq(lineClosed.storehouseId, storehouseId), isNull(lineClosed.undoneEntryId)))
    .as('session_of');

/** Where a container stands now, as far as whoever reads may know. */
const placeOf = (
  containerId: SQL | typeof containers.containerId,
) => sql`(select m.place_id from book.container_move m
  where m.storehouse_id = ${containers.storehouseId} and m.container_id = ${containerId}
  order by m.moved_on desc, m.moved_at desc, m.container_move_id desc limit 1)`;

/**
 * What is not empty beside a container: of its lot wherever it stands, and with `atPlace` whatever else stands in its place,
 * or where nobody has said that, whatever else its household has in no named place.
 */
export async function listBeside(
  tx: Tx,
  { storehouseId, containerId, lotId, householdId }: Looked['container'],
  { atPlace }: { atPlace: boolean },
) {
  const session = sessionOf(tx, storehouseId);
  const place = placeOf(containers.containerId);
  const here = sql`(${placeOf(sql`${containerId}::uuid`)})`;
  const isSamePlace = sql<boolean>`case when ${here} is null
    then ${householdId}::uuid is not null and ${containers.householdId} = ${householdId}::uuid and ${place} is null
    else ${place} = ${here} end`;
  const isBeside = atPlace ? isSamePlace : sql<boolean>`false`;
  const rows = await tx
    .select({
      containerId: containers.containerId,
      code: containers.containerCode,
      householdId: containers.householdId,
      isSameLot: sql<boolean>`${containers.lotId} = ${lotId}`,
      sessionId: session.sessionId,
    })
    .from(containers)
    .leftJoin(session, eq(session.containerId, containers.containerId))
    .where(
      and(
        eq(containers.storehouseId, storehouseId),
        or(eq(containers.lotId, lotId), isBeside),
        or(gt(gramsNow, 0), eq(containers.containerId, containerId)),
      ),
    )
    .orderBy(containers.containerCode);
  const own = rows.find((row) => row.containerId === containerId);
  return rows
    .filter((row) => row.containerId !== containerId)
    .map((row) => ({ ...row, isSameWindow: row.isSameLot && row.sessionId === (own?.sessionId ?? null) }));
}
export type Beside = Awaited<ReturnType<typeof listBeside>>[number];

export async function insertInspection(tx: Tx, row: typeof inspections.$inferInsert): Promise<InspectionRow> {
  const [inserted] = await tx.insert(inspections).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

/**
 * The containers that were closed as this one was, the emptied ones too: of its lot and its packing day, or with `isWholeLot`
 * or where it was closed on none, all of its lot.
 */
export async function listSiblings(
  tx: Tx,
  { storehouseId, containerId, lotId }: Looked['container'],
  { isWholeLot }: { isWholeLot: boolean },
): Promise<{ containerId: string; grams: number }[]> {
  const session = sessionOf(tx, storehouseId);
  const rows = await tx
    .select({ containerId: containers.containerId, grams: gramsNow, sessionId: session.sessionId })
    .from(containers)
    .leftJoin(session, eq(session.containerId, containers.containerId))
    .where(and(eq(containers.storehouseId, storehouseId), eq(containers.lotId, lotId)))
    .orderBy(containers.containerId);
  const sessionId = rows.find((row) => row.containerId === containerId)?.sessionId ?? null;
  return rows.filter(
    (row) =>
      row.containerId !== containerId && (isWholeLot || sessionId === null || row.sessionId === sessionId),
  );
}

/** Nothing is read back: others' watches are theirs. */
export async function insertWatches(tx: Tx, rows: readonly (typeof watches.$inferInsert)[]): Promise<void> {
  if (rows.length > 0) await tx.insert(watches).values([...rows]);
}

/** A look as whoever has the container may read it. */
export type ToldLook = Pick<
  InspectionRow,
  | 'inspectionId'
  | 'how'
  | 'findings'
  | 'best'
  | 'outcome'
  | 'damagedKernels'
  | 'sampleGrams'
  | 'note'
  | 'entryId'
  | 'inspectedOn'
> & {
  /** False: an earlier household took it; who, and what it noted beside, stays its own. */
  readonly isOwn: boolean;
};

/** Every look at a container, the newest first, those of an earlier household too. */
export async function listInspections(
  tx: Tx,
  storehouseId: string,
  containerId: string,
): Promise<ToldLook[]> {
  const rows = await tx.execute<ToldLook>(sql`
    select l.inspection_id as "inspectionId", l.is_own as "isOwn", l.how, l.findings, l.best, l.outcome,
      l.damaged_kernels as "damagedKernels", l.sample_grams as "sampleGrams", l.note, l.entry_id as "entryId",
      l.inspected_on::text as "inspectedOn"
    from book.list_looks(${storehouseId}, ${sql.param([containerId])}::uuid[]) l
    order by l.inspected_at desc, l.inspection_id desc`);
  return [...rows];
}

/** One look, and whether the grams that it booked out were put back. */
export async function loadInspection(tx: Tx, storehouseId: string, inspectionId: string) {
  const isUndone = sql<boolean>`exists (select from book.entry later
    where later.storehouse_id = ${storehouseId} and later.reverses_id = inspection.entry_id)`;
  const [row] = await tx
    .select({ inspection: inspections, isUndone })
    .from(inspections)
    .where(and(eq(inspections.storehouseId, storehouseId), eq(inspections.inspectionId, inspectionId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'inspection' });
  return row;
}

/** The watches of somebody's containers that nobody has looked at since, the oldest first. */
export async function listWatches(tx: Tx, storehouseId: string, householdId: string | null) {
  return tx
    .select({ ...lookedColumns, watch: watches })
    .from(watches)
    .innerJoin(containers, joinOn(containers, watches, 'containerId'))
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .where(
      and(
        eq(watches.storehouseId, storehouseId),
        isOf(householdId),
        gt(gramsNow, 0),
        sql`not exists (select from ${inspections} where ${inspections.storehouseId} = ${watches.storehouseId}
          and ${inspections.containerId} = ${watches.containerId}
          and ${inspections.inspectionId} > ${watches.inspectionId})`,
      ),
    )
    .orderBy(watches.since, containers.containerCode);
}
export type Watched = Awaited<ReturnType<typeof listWatches>>[number];

export async function insertSmallTest(tx: Tx, row: typeof smallTests.$inferInsert): Promise<void> {
  await tx.insert(smallTests).values(row);
}

/** The tests of a lot that may be read here: one's own, or the store's. The newest first. */
export async function listSmallTests(tx: Tx, storehouseId: string, lotId: string) {
  return tx
    .select()
    .from(smallTests)
    .where(and(eq(smallTests.storehouseId, storehouseId), eq(smallTests.lotId, lotId)))
    .orderBy(desc(smallTests.testedOn), desc(smallTests.smallTestId));
}
