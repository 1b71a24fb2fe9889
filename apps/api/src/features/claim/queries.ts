import type { Tx } from '@sheafbook/db';
import { type ClaimRow, claims } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, gt } from 'drizzle-orm';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, claimId: string) =>
  and(eq(claims.storehouseId, storehouseId), eq(claims.claimId, claimId));

/** The claims of a buy in the order that they were raised. */
export async function listClaims(
  tx: Tx,
  storehouseId: string,
  buyId: string,
  page: { after?: string | undefined; limit?: number } = {},
): Promise<ClaimRow[]> {
  const { after, limit = Number.MAX_SAFE_INTEGER } = page;
  return tx
    .select()
    .from(claims)
    .where(
      and(
        eq(claims.storehouseId, storehouseId),
        eq(claims.buyId, buyId),
        after === undefined ? undefined : gt(claims.claimId, after),
      ),
    )
    .orderBy(claims.claimId)
    .limit(limit);
}

/**
 * What a claim takes off the costs of its buy: all of it while it is open, what the supplier granted once it is
 * settled. In minor units.
 */
export function standingMinorUnits({
  state,
  minorUnits,
  creditedMinorUnits,
}: Pick<ClaimRow, 'state' | 'minorUnits' | 'creditedMinorUnits'>): number {
  return state === 'open' ? minorUnits : creditedMinorUnits;
}

export async function loadClaim(tx: Tx, storehouseId: string, claimId: string): Promise<ClaimRow> {
  const [row] = await tx.select().from(claims).where(isThis(storehouseId, claimId));
  if (!row) throw new Problem('thing-not-found', { thing: 'claim' });
  return row;
}

export async function insertClaim(tx: Tx, claim: typeof claims.$inferInsert): Promise<ClaimRow> {
  const [row] = await tx.insert(claims).values(claim).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function updateSettled(
  tx: Tx,
  claim: ClaimRow,
  set: { state: 'credited' | 'refused'; settledOn: string; creditedMinorUnits: number },
): Promise<ClaimRow> {
  const [row] = await tx
    .update(claims)
    .set({ ...set, version: claim.version + 1 })
    .where(isThis(claim.storehouseId, claim.claimId))
    .returning();
  assert(row, 'the claim was read under the lock of its buy');
  return row;
}
