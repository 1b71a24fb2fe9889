import { splitByWeight } from '@sheafbook/sharing';
import { assert, assertWhole, sumOf } from '@sheafbook/units';

/**
 * A cost of a session: what it was for and what it is shared by. `storehouse` bears what a machine spoilt.
 * Units: minor units. Errors: none by itself.
 */
export type SessionCost = {
  readonly name: 'supplies' | 'line-fee' | 'scrap' | 'breakage' | 'equipment-fee';
  readonly minorUnits: number;
  readonly borneBy: 'containers' | 'storehouse';
};

/** What each household filled. Units: containers. Errors: none by itself. */
export type SessionShare = { readonly householdId: string; readonly containers: number };

/** What a household is charged, line by line. Units: minor units. Errors: none by itself. */
export type SessionCharge = {
  readonly householdId: string;
  readonly lines: readonly { readonly name: SessionCost['name']; readonly minorUnits: number }[];
  readonly minorUnits: number;
};

/**
 * The charges of a session: each cost that households bear is shared by the containers they filled, by largest remainder,
 * line by line. What a machine spoilt is the storehouse's.
 * Units: minor units; charges and the storehouse's part add up to the costs exactly.
 * Shape: households in the order given (seats), which breaks ties. Errors: AssertionError when a figure is not whole and
 * ≥ 0, or households bear a cost and nobody filled a container.
 */
export function settleSession(
  costs: readonly SessionCost[],
  shares: readonly SessionShare[],
): { readonly charges: readonly SessionCharge[]; readonly storehouseMinorUnits: number } {
  for (const { minorUnits } of costs) assertWhole(minorUnits, 'minorUnits');
  for (const { containers } of shares) assertWhole(containers, 'containers');
  const borne = costs.filter(({ borneBy, minorUnits }) => borneBy === 'containers' && minorUnits > 0);
  const weights = shares.map(({ containers }) => containers);
  assert(borne.length === 0 || weights.some((weight) => weight > 0), 'somebody filled a container');
  const parts = borne.map((cost) => splitByWeight(cost.minorUnits, weights));
  const charges = shares.map(({ householdId }, position) => {
    const lines = borne.map(({ name }, line) => ({ name, minorUnits: parts[line]?.[position] ?? 0 }));
    return { householdId, lines, minorUnits: sumOf(lines.map((line) => line.minorUnits)) };
  });
  const ofStorehouse = costs.filter(({ borneBy }) => borneBy === 'storehouse');
  const storehouseMinorUnits = sumOf(ofStorehouse.map(({ minorUnits }) => minorUnits));
  return { charges, storehouseMinorUnits };
}
