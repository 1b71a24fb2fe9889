import { LEAST_HOUSEHOLDS } from '@sheafbook/coverage';
import type { PledgeRow } from '@sheafbook/db/tables';
import type { Actor } from '../../platform/actor.ts';
import { maySeePledges } from './policy.ts';

export type PledgedSum = { readonly buyLineId: string } & (
  | {
      readonly isShown: true;
      readonly households: number;
      readonly leastGrams: number;
      readonly wantedGrams: number;
      readonly mostGrams: number;
    }
  | { readonly isShown: false }
);

/**
 * What is pledged on each line, as far as the actor may see it. A member knows the own pledge and could take it off
 * the sum, so five households besides it must stand behind a figure; a helper knows two households' pledges.
 */
export function sumPledges(
  buyLineIds: readonly string[],
  pledges: readonly PledgeRow[],
  actor: Actor,
): PledgedSum[] {
  return buyLineIds.map((buyLineId) => {
    const onLine = pledges.filter((pledge) => pledge.buyLineId === buyLineId);
    const others = onLine.filter((pledge) => pledge.householdId !== actor.householdId).length;
    const unknown = actor.isHelping ? others - 1 : others;
    if (!maySeePledges(actor) && unknown < LEAST_HOUSEHOLDS) return { buyLineId, isShown: false };
    return { buyLineId, isShown: true, ...totalsOf(onLine) };
  });
}

/** Units: grams. A household pledges once on a line, so the pledges are the households. */
function totalsOf(pledges: readonly PledgeRow[]) {
  const sum = (gramsOf: (pledge: PledgeRow) => number) =>
    pledges.reduce((total, pledge) => total + gramsOf(pledge), 0);
  return {
    households: pledges.length,
    leastGrams: sum((pledge) => pledge.leastGrams),
    wantedGrams: sum((pledge) => pledge.wantedGrams),
    mostGrams: sum((pledge) => pledge.mostGrams),
  };
}
