import type { ChargedLine } from '@sheafbook/sharing';
import { assert, sumOf } from '@sheafbook/units';
import { Problem } from '../../platform/problem.ts';
import type { StoredChargeLine } from './queries.ts';
import { mergeCharges } from './recharge.ts';
import type { LateCredit } from './schema.ts';

const withoutLate = (costLine: string): string => costLine.replace(/^late:/, '');

/** A line as it was weighed last, so that who got more of the food in a later split has a part in a credit on it. */
export function lastWeighed(lines: readonly StoredChargeLine[], costLine: string): ChargedLine {
  const line = mergeCharges(lines).find((known) => known.costLineId === withoutLate(costLine));
  assert(line, 'a late line stands on one that was charged');
  return line;
}

/** No more comes back than the buy has cost altogether, late credits and bills included: a slip of a decimal point. */
export function refuseBeyondCharges(lines: readonly StoredChargeLine[], { minorUnits }: LateCredit): void {
  const mostMinorUnits = Math.max(0, sumOf(lines.map((line) => line.minorUnits)));
  if (minorUnits > mostMinorUnits)
    throw new Problem('does-not-add-up', {
      detail: 'That is more than the whole buy was charged, less what came back before.',
      fields: [{ field: 'minorUnits', message: 'A credit is never more than what the buy has cost.' }],
      mostMinorUnits,
    });
}

/** A late line stands apart, so that bringing the charges up to the bills leaves it alone. */
export function lateLine(
  original: ChargedLine,
  shares: readonly { readonly ownerId: string; readonly minorUnits: number }[],
): ChargedLine {
  const creditOf = new Map(shares.map((share) => [share.ownerId, share.minorUnits]));
  const { costLineId } = original;
  return {
    costLineId: costLineId.startsWith('late:') ? costLineId : `late:${costLineId}`,
    minorUnits: 0 - sumOf(shares.map((share) => share.minorUnits)),
    shares: original.shares.map((share) => ({
      ...share,
      minorUnits: 0 - (creditOf.get(share.ownerId) ?? 0),
      gotSpareUnit: false,
    })),
  };
}
