import type { Tx } from '@sheafbook/db';
import {
  containerKinds,
  containers,
  foods,
  type GiftManifestRow,
  giftFacts,
  giftLines,
  giftManifests,
  giftMatchings,
  lots,
  offerContainers,
  pantries,
  persons,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq, inArray, max, ne, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { isOfferedAt } from '../container/queries.ts';

export async function upsertFacts(tx: Tx, row: typeof giftFacts.$inferInsert): Promise<void> {
  const { storehouseId, containerId, ...said } = row;
  await tx
    .insert(giftFacts)
    .values(row)
    .onConflictDoUpdate({ target: [giftFacts.storehouseId, giftFacts.containerId], set: said });
}

/** What is on its way to a pantry, by the number of its manifest. */
export async function listOut(tx: Tx, storehouseId: string): Promise<Map<string, number>> {
  const rows = await tx
    .select({ containerId: giftLines.containerId, manifestNo: giftManifests.manifestNo })
    .from(giftLines)
    .innerJoin(giftManifests, joinOn(giftManifests, giftLines, 'giftManifestId'))
    .where(and(eq(giftLines.storehouseId, storehouseId), eq(giftLines.isOpen, true)));
  return new Map(rows.map(({ containerId, manifestNo }) => [containerId, manifestNo]));
}

/** What members are being offered at this moment. */
export async function listOfferedNow(tx: Tx, storehouseId: string, now: Date): Promise<Set<string>> {
  const rows = await tx
    .select({ containerId: offerContainers.containerId })
    .from(offerContainers)
    .where(and(eq(offerContainers.storehouseId, storehouseId), isOfferedAt(now)));
  return new Set(rows.map(({ containerId }) => containerId));
}

export async function insertMatching(tx: Tx, row: typeof giftMatchings.$inferInsert) {
  await tx.insert(giftMatchings).values(row);
}

export async function loadMatching(tx: Tx, storehouseId: string, giftMatchingId: string) {
  const [row] = await tx
    .select()
    .from(giftMatchings)
    .where(
      and(eq(giftMatchings.storehouseId, storehouseId), eq(giftMatchings.giftMatchingId, giftMatchingId)),
    );
  if (!row) throw new Problem('thing-not-found', { thing: 'matching' });
  return row;
}

/** What came back from a pantry last time it went out, and why. */
export type CameBack = { readonly pantry: string; readonly onDay: string | null; readonly reason: string };

/** What pantries did not take of containers, by container: the last word of any of them. */
export async function listCameBack(
  tx: Tx,
  storehouseId: string,
  containerIds: readonly string[],
): Promise<Map<string, CameBack>> {
  const rows = await tx
    .select({ line: giftLines, manifest: giftManifests, pantry: pantries.name })
    .from(giftLines)
    .innerJoin(giftManifests, joinOn(giftManifests, giftLines, 'giftManifestId'))
    .innerJoin(pantries, joinOn(pantries, giftManifests, 'pantryId'))
    .where(
      and(
        eq(giftLines.storehouseId, storehouseId),
        inArray(giftLines.containerId, [...containerIds]),
        eq(giftLines.isAccepted, false),
      ),
    )
    .orderBy(giftManifests.manifestNo);
  return new Map(
    rows.map(({ line, manifest, pantry }) => [
      line.containerId,
      { pantry, onDay: manifest.receivedOn, reason: line.refusedBecause ?? '' },
    ]),
  );
}

/** The grams that a pantry takes or took in some days; what came back is not counted. */
export async function sumGramsBetween(
  tx: Tx,
  storehouseId: string,
  { pantryId, fromOn, toOn }: { pantryId: string; fromOn: string; toOn: string },
): Promise<number> {
  const grams = sql`coalesce(sum(${giftLines.grams}), 0)`.mapWith(Number);
  const [row] = await tx
    .select({ grams })
    .from(giftLines)
    .innerJoin(giftManifests, joinOn(giftManifests, giftLines, 'giftManifestId'))
    .where(
      and(
        eq(giftLines.storehouseId, storehouseId),
        eq(giftManifests.pantryId, pantryId),
        ne(giftManifests.stage, 'called-off'),
        sql`${giftManifests.onDay} between ${fromOn} and ${toOn}`,
        sql`${giftLines.isAccepted} is not false`,
      ),
    );
  assert(row, 'an aggregate without group by returns one row');
  return row.grams;
}

export async function nextManifestNo(tx: Tx, storehouseId: string): Promise<number> {
  const [row] = await tx
    .select({ last: max(giftManifests.manifestNo) })
    .from(giftManifests)
    .where(eq(giftManifests.storehouseId, storehouseId));
  return (row?.last ?? 0) + 1;
}

export async function insertManifest(
  tx: Tx,
  manifest: typeof giftManifests.$inferInsert,
  lines: readonly (typeof giftLines.$inferInsert)[],
): Promise<void> {
  await tx.insert(giftManifests).values(manifest);
  await tx.insert(giftLines).values([...lines]);
}

/** The newest first. */
export async function listManifests(tx: Tx, storehouseId: string, giftManifestId?: string) {
  return tx
    .select({ manifest: giftManifests, pantry: pantries, signedOutBy: persons.name })
    .from(giftManifests)
    .innerJoin(pantries, joinOn(pantries, giftManifests, 'pantryId'))
    .innerJoin(persons, joinOn(persons, giftManifests, 'personId', 'signedOutBy'))
    .where(
      and(
        eq(giftManifests.storehouseId, storehouseId),
        giftManifestId === undefined ? undefined : eq(giftManifests.giftManifestId, giftManifestId),
      ),
    )
    .orderBy(desc(giftManifests.manifestNo));
}
export type ListedManifest = Awaited<ReturnType<typeof listManifests>>[number];

export async function loadManifest(tx: Tx, storehouseId: string, giftManifestId: string) {
  const [row] = await listManifests(tx, storehouseId, giftManifestId);
  if (!row) throw new Problem('thing-not-found', { thing: 'manifest' });
  return row;
}

export async function lockManifest(tx: Tx, storehouseId: string, giftManifestId: string) {
  const [row] = await tx
    .select()
    .from(giftManifests)
    .where(
      and(eq(giftManifests.storehouseId, storehouseId), eq(giftManifests.giftManifestId, giftManifestId)),
    )
    .for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'manifest' });
  return row;
}

/** The lines of manifests in their order, with what each container is and where its lot came from. */
export async function listLines(tx: Tx, storehouseId: string, giftManifestIds: readonly string[]) {
  return tx
    .select({ line: giftLines, container: containers, kind: containerKinds, food: foods, lot: lots })
    .from(giftLines)
    .innerJoin(containers, joinOn(containers, giftLines, 'containerId'))
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .where(
      and(eq(giftLines.storehouseId, storehouseId), inArray(giftLines.giftManifestId, [...giftManifestIds])),
    )
    .orderBy(giftLines.position);
}
export type ListedLine = Awaited<ReturnType<typeof listLines>>[number];
/** With the allergens of what ran before it on its line. */
export type LineWithMet = ListedLine & { readonly metOnLine: readonly string[] };

export async function updateManifest(
  tx: Tx,
  { storehouseId, giftManifestId, version }: GiftManifestRow,
  change: Partial<GiftManifestRow>,
): Promise<void> {
  await tx
    .update(giftManifests)
    .set({ ...change, version: version + 1 })
    .where(
      and(eq(giftManifests.storehouseId, storehouseId), eq(giftManifests.giftManifestId, giftManifestId)),
    );
}

/** Changes the lines of a manifest, all of them or those of some containers. */
export async function updateLines(
  tx: Tx,
  { storehouseId, giftManifestId }: Pick<GiftManifestRow, 'storehouseId' | 'giftManifestId'>,
  change: { isOpen: boolean; isAccepted: boolean | null; refusedBecause: string | null },
  containerIds?: readonly string[],
): Promise<void> {
  if (containerIds?.length === 0) return;
  await tx
    .update(giftLines)
    .set(change)
    .where(
      and(
        eq(giftLines.storehouseId, storehouseId),
        eq(giftLines.giftManifestId, giftManifestId),
        containerIds === undefined ? undefined : inArray(giftLines.containerId, [...containerIds]),
      ),
    );
}

/** What pantries accepted in some days, by pantry and food; of one owner where one is named. */
export async function listGiftsBetween(
  tx: Tx,
  storehouseId: string,
  { fromOn, toOn, ownerId }: { fromOn: string; toOn: string; ownerId?: string | null },
) {
  const grams = sql`sum(${giftLines.grams})`.mapWith(Number);
  return tx
    .select({ pantry: pantries.name, foodEn: foods.nameEn, foodEs: foods.nameEs, grams })
    .from(giftLines)
    .innerJoin(giftManifests, joinOn(giftManifests, giftLines, 'giftManifestId'))
    .innerJoin(pantries, joinOn(pantries, giftManifests, 'pantryId'))
    .innerJoin(containers, joinOn(containers, giftLines, 'containerId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .where(
      and(
        eq(giftLines.storehouseId, storehouseId),
        eq(giftLines.isAccepted, true),
        sql`${giftManifests.receivedOn} between ${fromOn}::date and ${toOn}::date`,
        ownerId ? eq(giftLines.ownerId, ownerId) : undefined,
      ),
    )
    .groupBy(pantries.name, foods.nameEn, foods.nameEs)
    .orderBy(pantries.name, foods.nameEn);
}
export type GiftOfYear = Awaited<ReturnType<typeof listGiftsBetween>>[number];
