import type { ClaimRow } from '@sheafbook/db/tables';
import { standingMinorUnits } from './queries.ts';

type Billed = {
  readonly supplierId: string;
  readonly kind: 'goods' | 'freight' | 'other';
  readonly buyLineId: string | null;
  readonly minorUnits: number;
};

export type ClaimFacts = {
  /** What was ordered, by line, and each order's freight as a line of its own. */
  readonly ordered: readonly Billed[];
  readonly billed: readonly Billed[];
  readonly claims: readonly ClaimRow[];
};

type Claimed = { readonly supplierId: string; readonly buyLineId: string | null; readonly kind: string };

/**
 * The most that can still be claimed of a food, of the freight, or of an order as a whole: what it costs, as ordered
 * or as billed, whichever is more, less what the claims before it take off. In minor units.
 */
export function mostClaimable({ ordered, billed, claims }: ClaimFacts, claim: Claimed): number {
  const isMeant = (line: Billed): boolean => {
    if (claim.buyLineId !== null) return line.buyLineId === claim.buyLineId;
    return line.supplierId === claim.supplierId && (claim.kind !== 'freight' || line.kind !== 'goods');
  };
  const before = claims.filter((other) => {
    if (claim.buyLineId !== null) return other.buyLineId === claim.buyLineId;
    const isSameThing = claim.kind !== 'freight' || other.kind === 'freight';
    return other.buyLineId === null && other.supplierId === claim.supplierId && isSameThing;
  });
  const costs = Math.max(sumOf(ordered.filter(isMeant)), sumOf(billed.filter(isMeant)));
  return Math.max(0, costs - before.reduce((sum, other) => sum + standingMinorUnits(other), 0));
}

const sumOf = (lines: readonly Billed[]): number => lines.reduce((sum, line) => sum + line.minorUnits, 0);
