import type { Tx } from '@sheafbook/db';
import {
  dutyGrants,
  households,
  persons,
  type StopLinkRow,
  stopLinks,
  storehouses,
  type TellingWishRow,
  tellings,
  tellingWishes,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, inArray, isNotNull, isNull, sql } from 'drizzle-orm';

/** What a person wishes, without whose it is. */
export type OwnWishes = Omit<TellingWishRow, 'storehouseId' | 'personId'>;

type Reader = { readonly storehouseId: string; readonly personId: string };

const isOf = (
  table: typeof tellingWishes | typeof tellings | typeof stopLinks,
  { storehouseId, personId }: Reader,
) => and(eq(table.storehouseId, storehouseId), eq(table.personId, personId));

export async function findWishes(tx: Tx, reader: Reader): Promise<TellingWishRow | undefined> {
  const [row] = await tx.select().from(tellingWishes).where(isOf(tellingWishes, reader));
  return row;
}

/**
 * Writes the first wishes of a person, or the next version of them. One statement: nothing, where somebody wrote others
 * since `version`, be it at this very moment and the first.
 */
export async function upsertWishes(
  tx: Tx,
  reader: Reader,
  { version, ...wishes }: OwnWishes,
): Promise<TellingWishRow | undefined> {
  const [row] = await tx
    .insert(tellingWishes)
    .values({ ...reader, ...wishes })
    .onConflictDoUpdate({
      target: [tellingWishes.storehouseId, tellingWishes.personId],
      set: { ...wishes, version: version + 1 },
      setWhere: eq(tellingWishes.version, version),
    })
    .returning();
  return row;
}

/**
 * Adds to what a person has stopped, leaving all else as they wish it; `usual` is what holds where they never wished
 * anything. One statement, so that no two links followed at once undo each other.
 */
export async function stopInWishes(
  tx: Tx,
  reader: Reader,
  { usual, kind }: { usual: OwnWishes; kind: string },
): Promise<TellingWishRow> {
  const { version: _, ...first } = usual;
  const { stoppedKinds, isEmailOn, version } = tellingWishes;
  const stopped = kind === 'all' ? { isEmailOn: false } : { stoppedKinds: [kind] };
  const [row] = await tx
    .insert(tellingWishes)
    .values({ ...reader, ...first, ...stopped })
    .onConflictDoUpdate({
      target: [tellingWishes.storehouseId, tellingWishes.personId],
      set: {
        stoppedKinds: sql`array(select distinct one from unnest(${stoppedKinds} || excluded.stopped_kinds) one order by one)`,
        isEmailOn: sql`${isEmailOn} and excluded.is_email_on`,
        version: sql`${version} + 1`,
      },
    })
    .returning();
  assert(row, 'an upsert returns its row');
  return row;
}

export async function loadPlace(tx: Tx, storehouseId: string) {
  const [row] = await tx.select().from(storehouses).where(eq(storehouses.storehouseId, storehouseId));
  assert(row, 'the transaction is of this storehouse');
  return row;
}

/** Everybody who can be told something: they have a login and have not left. */
export async function listReaders(tx: Tx, storehouseId: string) {
  return tx
    .select({
      personId: persons.personId,
      loginId: persons.loginId,
      householdId: households.householdId,
    })
    .from(persons)
    .leftJoin(
      households,
      and(
        eq(households.storehouseId, persons.storehouseId),
        eq(households.householdId, persons.householdId),
        isNull(households.leftOn),
      ),
    )
    .where(and(eq(persons.storehouseId, storehouseId), isNotNull(persons.loginId), isNull(persons.leftOn)))
    .orderBy(persons.personId);
}

export async function listDutiesNow(tx: Tx, storehouseId: string) {
  return tx
    .select({ personId: dutyGrants.personId, duty: dutyGrants.duty })
    .from(dutyGrants)
    .where(and(eq(dutyGrants.storehouseId, storehouseId), isNull(dutyGrants.endedAt)));
}

/** Which of these keys a person was told already. */
export async function listTold(
  tx: Tx,
  reader: Reader,
  keys: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await tx
    .select({ key: tellings.tellingKey })
    .from(tellings)
    .where(and(isOf(tellings, reader), inArray(tellings.tellingKey, [...keys])));
  return new Set(rows.map(({ key }) => key));
}

/** Marks as told by e-mail, once: gives the keys that nobody marked before, also not at this very moment. */
export async function insertTold(
  tx: Tx,
  reader: Reader,
  told: { readonly keys: readonly string[]; readonly at: Date },
): Promise<ReadonlySet<string>> {
  if (told.keys.length === 0) return new Set();
  const rows = await tx
    .insert(tellings)
    .values(told.keys.map((tellingKey) => ({ ...reader, channel: 'email', tellingKey, toldAt: told.at })))
    .onConflictDoNothing()
    .returning({ key: tellings.tellingKey });
  return new Set(rows.map(({ key }) => key));
}

export async function insertStopLink(tx: Tx, link: StopLinkRow): Promise<void> {
  await tx.insert(stopLinks).values(link);
}

export async function findStopLink(
  tx: Tx,
  { storehouseId, tokenHash }: { storehouseId: string; tokenHash: string },
): Promise<StopLinkRow | undefined> {
  const [row] = await tx
    .select()
    .from(stopLinks)
    .where(and(eq(stopLinks.storehouseId, storehouseId), eq(stopLinks.tokenHash, tokenHash)));
  return row;
}

/** How somebody wanted to be told things, and what they were told, leaves with them. */
export async function deleteTellingsOf(
  tx: Tx,
  leavers: { readonly storehouseId: string; readonly personIds: readonly string[] },
): Promise<void> {
  for (const table of [tellingWishes, tellings, stopLinks])
    await tx
      .delete(table)
      .where(
        and(eq(table.storehouseId, leavers.storehouseId), inArray(table.personId, [...leavers.personIds])),
      );
}
