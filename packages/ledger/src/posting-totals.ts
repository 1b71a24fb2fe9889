import { assertWhole, compareText } from '@sheafbook/units';
import { type AccountKey, accountKeyText, type UnitKey } from './account-key.ts';
import type { MovementDraft } from './movement-draft.ts';

/** What one batch adds to an account's two running totals. Units: the account's own. Errors: none. */
export type Totals = { readonly ins: number; readonly outs: number };

/** The totals of one account of a batch, with the account spelled out. Units: the account's own. Errors: none. */
export type PostingTotal = Totals & {
  readonly accountKey: string;
  readonly unit: UnitKey;
  readonly key: AccountKey;
};

/**
 * Nets a batch of drafts to one pair of totals for each account, by account key text. A guard sees the batch's end
 * only: a bag may be filled and emptied in one batch in whatever order its events were written down.
 * Units: the accounts' own. Errors: AssertionError when a total leaves the whole numbers below 2^53.
 */
export function netDrafts(drafts: readonly MovementDraft[]): Map<string, Totals> {
  return new Map(postingTotals(drafts).map(({ accountKey, ins, outs }) => [accountKey, { ins, outs }]));
}

/**
 * The same totals with the accounts spelled out, sorted by account key text. Creating missing accounts and locking
 * them in this order keeps two posters from waiting for each other.
 * Units: the accounts' own. Errors: AssertionError when a total leaves the whole numbers below 2^53.
 */
export function postingTotals(drafts: readonly MovementDraft[]): PostingTotal[] {
  const totals = new Map<string, PostingTotal>();
  for (const { unit, source, destination, amount } of drafts) {
    add(totals, { unit, key: source, ins: 0, outs: amount });
    add(totals, { unit, key: destination, ins: amount, outs: 0 });
  }
  return [...totals.values()].sort((a, b) => compareText(a.accountKey, b.accountKey));
}

function add(totals: Map<string, PostingTotal>, part: Totals & { unit: UnitKey; key: AccountKey }): void {
  const accountKey = accountKeyText(part.unit, part.key);
  const before = totals.get(accountKey) ?? { ins: 0, outs: 0 };
  const ins = before.ins + part.ins;
  const outs = before.outs + part.outs;
  assertWhole(ins, 'ins');
  assertWhole(outs, 'outs');
  totals.set(accountKey, { accountKey, unit: part.unit, key: part.key, ins, outs });
}
