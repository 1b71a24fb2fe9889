import type { Actor } from './actor.ts';
import { Problem } from './problem.ts';

/** The household acted for, or null for common stock, which is for those who keep it. */
export function whoseStock(
  { actor }: { readonly actor: Actor },
  of: 'household' | 'common',
  mayKeepCommon: (actor: Actor) => boolean,
): string | null {
  if (of === 'common') {
    if (!mayKeepCommon(actor)) throw new Problem('duty-missing');
    return null;
  }
  if (actor.householdId === null) throw new Problem('household-needed');
  return actor.householdId;
}
