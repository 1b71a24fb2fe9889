import { type EaterFacts, type HouseholdCoverage, householdCoverage } from '@sheafbook/coverage';
import type { Tx } from '@sheafbook/db';
import { listEatersOf, listPlansOf } from './queries.ts';
import { coverageInput, toFacts } from './reckon.ts';

/** Who eats in a household and what each needs, whatever it has. */
export type Eating = { readonly eaters: readonly EaterFacts[]; readonly needs: HouseholdCoverage };

export async function loadEating(
  tx: Tx,
  storehouseId: string,
  { householdId, todayOn }: { householdId: string; todayOn: string },
): Promise<Eating> {
  const eaters = await listEatersOf(tx, storehouseId, [householdId]);
  const { plans, guidelines } = await listPlansOf(tx, storehouseId, [householdId]);
  const stock = { atHome: [], coming: [], held: [], withoutEnergy: [] };
  const input = coverageInput({ eaters, plan: plans[0], guidelines, stock }, todayOn);
  return { eaters: eaters.map(toFacts), needs: householdCoverage(input) };
}
