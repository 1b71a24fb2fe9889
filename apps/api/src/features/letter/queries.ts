import type { Tx } from '@sheafbook/db';
import { type LetterRow, letters, persons } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, inArray, sql } from 'drizzle-orm';

export type LetterId = Pick<LetterRow, 'storehouseId' | 'letterId'>;

const isThis = ({ storehouseId, letterId }: LetterId) =>
  and(eq(letters.storehouseId, storehouseId), eq(letters.letterId, letterId));

export async function insertLetter(tx: Tx, letter: typeof letters.$inferInsert): Promise<void> {
  await tx.insert(letters).values(letter);
}

export async function lockLetter(tx: Tx, of: LetterId): Promise<LetterRow | undefined> {
  const [row] = await tx.select().from(letters).where(isThis(of)).for('update');
  return row;
}

/** Where letters to a person go today: no address where they have left or have no login. */
export async function loadReader(tx: Tx, storehouseId: string, personId: string) {
  const address = sql<string | null>`(select l.email from door.find_login(${persons.loginId}) l
    where ${persons.leftOn} is null)`;
  const [row] = await tx
    .select({ name: persons.name, address })
    .from(persons)
    .where(and(eq(persons.storehouseId, storehouseId), eq(persons.personId, personId)));
  assert(row, 'a letter is to a person');
  return row;
}

export async function updateLetter(
  tx: Tx,
  of: LetterId,
  to: Pick<LetterRow, 'state'> & Partial<LetterRow>,
): Promise<void> {
  await tx.update(letters).set(to).where(isThis(of));
}

/** A letter holds what is its reader's alone, so it goes when they do. */
export async function deleteLettersOf(
  tx: Tx,
  of: { readonly storehouseId: string; readonly personIds: readonly string[] },
): Promise<void> {
  await tx
    .delete(letters)
    .where(and(eq(letters.storehouseId, of.storehouseId), inArray(letters.personId, [...of.personIds])));
}
