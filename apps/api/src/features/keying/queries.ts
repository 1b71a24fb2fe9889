import type { Tx } from '@sheafbook/db';
import { type KeyingRow, keyings, papers, persons } from '@sheafbook/db/tables';
import { and, asc, eq } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

export async function insertKeyings(tx: Tx, rows: readonly (typeof keyings.$inferInsert)[]): Promise<void> {
  if (rows.length > 0) await tx.insert(keyings).values([...rows]);
}

export async function findPaperId(
  tx: Tx,
  storehouseId: string,
  paperCode: string,
): Promise<string | undefined> {
  const [row] = await tx
    .select({ paperId: papers.paperId })
    .from(papers)
    .where(and(eq(papers.storehouseId, storehouseId), eq(papers.paperCode, paperCode)));
  return row?.paperId;
}

/** A keying with who did it and the code of its paper. */
export type SeenKeying = KeyingRow & { readonly keyedByName: string; readonly paperCode: string | null };

/** What was keyed in for a buy, in the order of keying. */
export async function listKeyings(tx: Tx, storehouseId: string, buyId: string): Promise<SeenKeying[]> {
  const rows = await tx
    .select({ keying: keyings, keyedByName: persons.name, paperCode: papers.paperCode })
    .from(keyings)
    .innerJoin(persons, joinOn(persons, keyings, 'personId', 'keyedBy'))
    .leftJoin(papers, joinOn(papers, keyings, 'paperId'))
    .where(and(eq(keyings.storehouseId, storehouseId), eq(keyings.buyId, buyId)))
    .orderBy(asc(keyings.keyedAt), asc(keyings.keyingId));
  return rows.map(({ keying, ...rest }) => ({ ...keying, ...rest }));
}
