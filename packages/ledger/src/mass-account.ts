import type { AccountKey } from './account-key.ts';

/**
 * Where grams of a lot are, and whose: a bag, a container or an outside vessel, under an owner.
 * Units: grams of the lot that the unit names. Errors: none.
 */
export function massAccount(vesselId: string, ownerId: string): AccountKey {
  return { kind: 'mass', vesselId, ownerId, causeId: null };
}
