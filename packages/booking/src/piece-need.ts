/** What a piece needs before it can be lent as it is. Units: none. Errors: none. */
export type PieceNeed = 'broken' | 'dirty' | 'critical-part-missing' | 'part-missing' | 'service-due';

/** A piece as it stands. Units: none. Errors: none by itself. */
export type PieceState = {
  readonly condition: string;
  /** The parts that it lacks, each with whether it runs without. */
  readonly missing: readonly { readonly isCritical: boolean }[];
  readonly isServiceDue: boolean;
};

/**
 * What a piece needs first: to be mended, cleaned, given a part that it does not run without or another, or serviced; null
 * where it is ready to be lent, or retired and lent no more.
 * Units: none. Errors: none.
 */
export function needOfPiece({ condition, missing, isServiceDue }: PieceState): PieceNeed | null {
  if (condition === 'retired') return null;
  if (condition === 'broken' || condition === 'dirty') return condition;
  if (missing.some(({ isCritical }) => isCritical)) return 'critical-part-missing';
  if (missing.length > 0) return 'part-missing';
  return isServiceDue ? 'service-due' : null;
}
