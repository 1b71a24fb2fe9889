/**
 * The balance of an account: what came in less what went out. Inflow is the debit side: above zero a household owes,
 * a bank holds, a bag is not empty; below zero a supplier is owed, a deposit is held.
 * Units: the account's own. Errors: none.
 */
export function balanceOf(totals: { readonly inflow: number; readonly outflow: number }): number {
  return totals.inflow - totals.outflow;
}

/**
 * The words that say a household's sign.
 * Units: none. Errors: none.
 */
export type SignInWords = 'you-owe' | 'you-are-owed' | 'nothing-due';

/** Says a household balance's sign in words, never by colour or minus. Units: minor units. Errors: none. */
export function signInWords(balanceMinorUnits: number): SignInWords {
  if (balanceMinorUnits === 0) return 'nothing-due';
  return balanceMinorUnits > 0 ? 'you-owe' : 'you-are-owed';
}
