import type { AccountKey, AccountKind } from './account-key.ts';
import type { OutsideKind } from './outside.ts';

/**
 * Which side of zero an account may not pass. `not_below`: inflow ≥ outflow. `not_above`: inflow ≤ outflow, for
 * what the storehouse holds in trust.
 * Units: none. Errors: none.
 */
export type Guard = 'none' | 'not_below' | 'not_above';

const NEVER_BELOW: ReadonlySet<AccountKind> = new Set<AccountKind>([
  'cash_tin',
  'supplier_claim',
  'supplies',
  'common_stock',
  'equipment',
  'pieces',
]);

/**
 * The guard of an account. Things that can be counted in the hand never fall below nothing; deposits never become
 * a loan to the member; all else may stand on either side, a bank account by its overdraft.
 * `outsideKind` is given when the account's vessel stands for the outside. A supplier can't take back more than it
 * sent, and nothing eaten or given comes back beyond what went; a transform makes grams as well as taking them, and a
 * re-weigh may find more than was booked. Pieces that nobody owns stand outside: a shop sold them, or they were used up.
 * Units: none. Errors: none. Source: ledger-notes 6.1.
 */
export function guardOf(key: Pick<AccountKey, 'kind' | 'ownerId'>, outsideKind?: OutsideKind | null): Guard {
  if (key.kind === 'buy_deposit' || key.kind === 'loan_deposit') return 'not_above';
  if (key.kind === 'pieces' && key.ownerId === null) return 'none';
  if (key.kind !== 'mass') return NEVER_BELOW.has(key.kind) ? 'not_below' : 'none';
  if (outsideKind === 'supplier') return 'not_above';
  return ['transformed', 'unexplained', 'moisture'].includes(outsideKind ?? '') ? 'none' : 'not_below';
}

/** Tells whether totals respect a guard. Units: both totals in the account's own unit. Errors: none. */
export function respectsGuard(guard: Guard, totals: { readonly inflow: number; readonly outflow: number }) {
  if (guard === 'not_below') return totals.inflow >= totals.outflow;
  return guard === 'not_above' ? totals.inflow <= totals.outflow : true;
}
