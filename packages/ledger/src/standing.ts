/** What a movement's entry undoes, if it undoes one. Units: none. Errors: none. */
type Reversible = { readonly entryId: string; readonly reversesEntryId: string | null };

/**
 * The movements that still stand: of first entries that nothing took back. A reversal that was itself reversed leaves the
 * first entry standing, so what an entry and its reversals come to in the end is told once or not at all.
 * Units: none. Errors: none.
 */
export function standingMovements<Movement extends Reversible>(movements: readonly Movement[]): Movement[] {
  const reversedBy = new Map(movements.map(({ entryId, reversesEntryId }) => [reversesEntryId, entryId]));
  const stands = (entryId: string): boolean => {
    const reversal = reversedBy.get(entryId);
    return reversal === undefined || !stands(reversal);
  };
  return movements.filter(({ entryId, reversesEntryId }) => reversesEntryId === null && stands(entryId));
}
