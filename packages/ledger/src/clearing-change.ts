import { accountKeyText, CURRENCY } from './account-key.ts';
import { clearingAccount } from './money-accounts.ts';
import type { MovementDraft } from './movement-draft.ts';
import { netDrafts } from './posting-totals.ts';

/**
 * What a batch of drafts does to a buy's clearing account. A closed buy takes only batches that come to 0 here: a
 * correction that passes through its clearing account nets to nothing within one entry, or leaves it alone.
 * Units: minor units, costs above zero. Errors: none. Source: ledger-notes 6.2.
 */
export function clearingChange(drafts: readonly MovementDraft[], buyId: string): number {
  const totals = netDrafts(drafts).get(accountKeyText(CURRENCY, clearingAccount(buyId)));
  return totals ? totals.ins - totals.outs : 0;
}
