import type { Tx } from '@sheafbook/db';
import type { GiftTerms } from '@sheafbook/keeping';
import { listGiftTerms } from '../pantry/queries.ts';
import { loadRules } from '../storehouse/queries.ts';

/** What decides the three dates beside how long a container keeps. */
export type DateTerms = {
  readonly pantries: readonly GiftTerms[];
  readonly offerDays: number;
  readonly offerDaysWithoutPantry: number;
};

/** What pantries ask of a gift, and the group's own days before which members are asked. */
export async function loadDateTerms(tx: Tx, storehouseId: string): Promise<DateTerms> {
  const { offerDays, offerDaysWithoutPantry } = await loadRules(tx, storehouseId);
  return { pantries: await listGiftTerms(tx, storehouseId), offerDays, offerDaysWithoutPantry };
}
