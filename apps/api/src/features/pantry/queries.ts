import type { Tx } from '@sheafbook/db';
import {
  giftFacts,
  type PantryCardRow,
  type PantryOpeningRow,
  type PantryRow,
  pantries,
  pantryCards,
  pantryOpenings,
  persons,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

export type Card = {
  readonly card: PantryCardRow;
  readonly openings: readonly PantryOpeningRow[];
  readonly writtenBy: string;
};
export type PantryWithCard = { readonly pantry: PantryRow; readonly current: Card };

/** Pantries by name with the card in force; those that are no longer gone to only where asked for. */
export async function listPantries(
  tx: Tx,
  storehouseId: string,
  { withRetired = false }: { withRetired?: boolean } = {},
): Promise<PantryWithCard[]> {
  const rows = await tx
    .select({ pantry: pantries, card: pantryCards, writtenBy: persons.name })
    .from(pantries)
    .innerJoin(pantryCards, joinOn(pantryCards, pantries, 'pantryId'))
    .innerJoin(persons, joinOn(persons, pantryCards, 'personId', 'writtenBy'))
    .where(
      and(
        eq(pantries.storehouseId, storehouseId),
        eq(pantryCards.cardVersion, pantries.cardVersion),
        withRetired ? undefined : eq(pantries.isRetired, false),
      ),
    )
    .orderBy(pantries.name, pantries.pantryId);
  const openings = await listOpenings(tx, storehouseId);
  return rows.map(({ pantry, card, writtenBy }) => ({
    pantry,
    current: { card, writtenBy, openings: openings.filter((row) => isOfCard(row, card)) },
  }));
}

export async function loadPantry(tx: Tx, storehouseId: string, pantryId: string): Promise<PantryWithCard> {
  const found = await listPantries(tx, storehouseId, { withRetired: true });
  const row = found.find(({ pantry }) => pantry.pantryId === pantryId);
  if (!row) throw new Problem('thing-not-found', { thing: 'pantry' });
  return row;
}

/** Every card that a pantry ever had, the newest first. */
export async function listCards(tx: Tx, { storehouseId, pantryId }: PantryRow): Promise<Card[]> {
  const rows = await tx
    .select({ card: pantryCards, writtenBy: persons.name })
    .from(pantryCards)
    .innerJoin(persons, joinOn(persons, pantryCards, 'personId', 'writtenBy'))
    .where(and(eq(pantryCards.storehouseId, storehouseId), eq(pantryCards.pantryId, pantryId)))
    .orderBy(desc(pantryCards.cardVersion));
  const openings = await listOpenings(tx, storehouseId);
  return rows.map((row) => ({ ...row, openings: openings.filter((one) => isOfCard(one, row.card)) }));
}

const isOfCard = (row: PantryOpeningRow, card: PantryCardRow): boolean =>
  row.pantryId === card.pantryId && row.cardVersion === card.cardVersion;

async function listOpenings(tx: Tx, storehouseId: string): Promise<PantryOpeningRow[]> {
  return tx
    .select()
    .from(pantryOpenings)
    .where(eq(pantryOpenings.storehouseId, storehouseId))
    .orderBy(pantryOpenings.weekday, pantryOpenings.opensAt);
}

/** What was said of containers for giving them. */
export async function listFacts(tx: Tx, storehouseId: string) {
  return tx.select().from(giftFacts).where(eq(giftFacts.storehouseId, storehouseId));
}

export async function lockPantry(tx: Tx, storehouseId: string, pantryId: string): Promise<PantryRow> {
  const [row] = await tx
    .select()
    .from(pantries)
    .where(and(eq(pantries.storehouseId, storehouseId), eq(pantries.pantryId, pantryId)))
    .for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'pantry' });
  return row;
}

export async function findPantryNamed(tx: Tx, storehouseId: string, name: string) {
  const [row] = await tx
    .select({ pantryId: pantries.pantryId })
    .from(pantries)
    .where(and(eq(pantries.storehouseId, storehouseId), eq(pantries.name, name)));
  return row?.pantryId;
}

export async function insertPantry(tx: Tx, pantry: typeof pantries.$inferInsert): Promise<PantryRow> {
  const [row] = await tx.insert(pantries).values(pantry).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function updatePantry(
  tx: Tx,
  { storehouseId, pantryId, version }: PantryRow,
  change: Partial<PantryRow>,
): Promise<void> {
  await tx
    .update(pantries)
    .set({ ...change, version: version + 1 })
    .where(and(eq(pantries.storehouseId, storehouseId), eq(pantries.pantryId, pantryId)));
}

export async function insertCard(
  tx: Tx,
  card: typeof pantryCards.$inferInsert,
  openings: readonly { weekday: number; opensAt: string; closesAt: string }[],
): Promise<void> {
  await tx.insert(pantryCards).values(card);
  const { storehouseId, pantryId, cardVersion } = card;
  await tx
    .insert(pantryOpenings)
    .values(openings.map((opening) => ({ storehouseId, pantryId, cardVersion, ...opening })));
}
