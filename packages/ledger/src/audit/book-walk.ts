import type { AuditAccount, AuditInput, AuditMovement } from './audit-rows.ts';

/** What is true of the accounts an entry touched, once the whole entry is posted. Units: the accounts' own. Errors: none. */
export type AfterEntry = {
  readonly entryNo: number;
  readonly touched: readonly AuditAccount[];
  readonly balances: ReadonlyMap<string, number>;
  readonly unitSums: ReadonlyMap<string, number>;
};

/**
 * Walks the book in the order it was recorded and looks at it after each entry, when every guard must hold. A movement
 * side whose account is not among the rows counts for nothing, so that its unit goes out of balance.
 * Units: the accounts' own. Errors: none.
 */
export function walkBook(input: AuditInput, look: (after: AfterEntry) => void): void {
  const accounts = new Map(input.accounts.map((account) => [account.accountId, account]));
  const byEntry = groupByEntry(input.movements);
  const balances = new Map<string, number>();
  const unitSums = new Map<string, number>();
  const touch = (accountId: string, amount: number): AuditAccount[] => {
    const account = accounts.get(accountId);
    if (!account) return [];
    balances.set(accountId, (balances.get(accountId) ?? 0) + amount);
    unitSums.set(account.unitId, (unitSums.get(account.unitId) ?? 0) + amount);
    return [account];
  };
  for (const { entryId, entryNo } of input.entries.toSorted((a, b) => a.entryNo - b.entryNo)) {
    const touched = (byEntry.get(entryId) ?? []).flatMap(({ sourceId, destinationId, amount }) => [
      ...touch(sourceId, -amount),
      ...touch(destinationId, amount),
    ]);
    look({ entryNo, touched, balances, unitSums });
  }
}

/** Groups movements by their entry. Units: none. Errors: none. */
export function groupByEntry(movements: readonly AuditMovement[]): Map<string, AuditMovement[]> {
  const groups = new Map<string, AuditMovement[]>();
  for (const movement of movements) {
    const group = groups.get(movement.entryId);
    if (group) group.push(movement);
    else groups.set(movement.entryId, [movement]);
  }
  return groups;
}
