import type { Tx } from '@sheafbook/db';
import { sql } from 'drizzle-orm';

/** Holds off every posting until this transaction ends, so that what was found to stand in the book still does. */
export async function lockBook(tx: Tx): Promise<void> {
  await tx.execute(sql`select book.lock_book()`);
}
