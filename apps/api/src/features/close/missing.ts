import type { Missing } from '@sheafbook/ledger';
import type { Actor } from '../../platform/actor.ts';
import { seesDeposits } from './policy.ts';

/** What closing still lacks: the ledger's own list, and charges that don't know of the last split, claim or bill. */
export type ClosingLack = Omit<Missing, 'code'> & { readonly code: Missing['code'] | 'charges-behind' };

const WORDS: Readonly<Partial<Record<ClosingLack['code'], string>>> = {
  'invoice-missing': 'A supplier whose goods landed has not billed them yet.',
  'claim-open': 'A claim is neither granted nor refused yet.',
  'clearing-not-zero': 'The buy’s clearing account is not at 0.00.',
  'deposit-held': 'A deposit of the buy is still held.',
  'mass-unassigned': 'Some grams belong to nobody: split them, or release or throw away the bags on hold.',
  'charges-behind': 'A split, a claim or a bill came after the buy was shared out. Recharge the buy.',
};

/** Whose deposit is held is for all who may look; how much, for treasurer and reviewer (job map section 14). */
export function presentLacks(missing: readonly ClosingLack[], actor: Actor) {
  return missing.map(({ code, count, ids, minorUnits, grams }) => ({
    code,
    words: WORDS[code] ?? '',
    ...(count === undefined ? {} : { count }),
    ...(ids === undefined ? {} : { ids }),
    ...(minorUnits === undefined || (code === 'deposit-held' && !seesDeposits(actor)) ? {} : { minorUnits }),
    ...(grams === undefined ? {} : { grams }),
  }));
}
