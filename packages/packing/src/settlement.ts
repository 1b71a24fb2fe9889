import { splitByWeight } from '@sheafbook/sharing';
import { assert, assertWhole, sumOf } from '@sheafbook/units';

/**
 * A cost of a session: what it was for and what it is shared by. `storehouse` bears what a machine spoilt. `weights` are the
 * containers of each household that took a part in it, in the order of the shares; all that it filled where none is given.
 * Units: minor units, containers. Errors: none by itself.
 */
export type SessionCost = {
  readonly name: 'supplies' | 'line-fee' | 'scrap' | 'breakage' | 'equipment-fee' | 'sundries';
  readonly minorUnits: number;
  readonly borneBy: 'containers' | 'storehouse';
  readonly weights?: readonly number[];
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
  assert(
    borne.length === 0 || shares.some(({ containers }) => containers > 0),
    'somebody filled a container',
  );
  const parts = borne.map((cost) => splitByWeight(cost.minorUnits, weightsUsed(cost, shares)));
  const charges = shares.map(({ householdId }, position) => {
    const lines = borne.map(({ name }, line) => ({ name, minorUnits: parts[line]?.[position] ?? 0 }));
    return { householdId, lines, minorUnits: sumOf(lines.map((line) => line.minorUnits)) };
  });
  const ofStorehouse = costs.filter(({ borneBy }) => borneBy === 'storehouse');
  const storehouseMinorUnits = sumOf(ofStorehouse.map(({ minorUnits }) => minorUnits));
  return { charges, storehouseMinorUnits };
}

/**
 * By what a cost is shared: the containers that took a part in it, or all that were filled where none did.
 * Units: containers. Shape: one for each share, in their order. Errors: AssertionError unless there is one weight a share.
 */
function weightsUsed(
  { weights }: Pick<SessionCost, 'weights'>,
  shares: readonly SessionShare[],
): readonly number[] {
  const filled = shares.map(({ containers }) => containers);
  if (weights === undefined) return filled;
  assert(weights.length === shares.length, 'a cost weighs every household');
  return weights.some((weight) => weight > 0) ? weights : filled;
}
