import type { Actor } from '../../platform/actor.ts';
import type { WithdrawnLine } from './answer.ts';
import { maySeeMoney, maySeeWithdrawals } from './policy.ts';
import type { Withdrawal } from './queries.ts';

/** Who took the food over stays between the takers and the duties; what it costs, with the household and the treasurer. */
export function presentWithdrawal(withdrawal: Withdrawal, actor: Actor) {
  const { answer, householdId } = withdrawal;
  const { pledges, harmMinorUnits, withheldMinorUnits, refundMinorUnits, lines } = answer;
  return {
    id: withdrawal.withdrawalId,
    buyId: withdrawal.buyId,
    householdId,
    stageThen: withdrawal.stageThen,
    reason: withdrawal.reason,
    withdrawnAt: withdrawal.withdrawnAt.toISOString(),
    pledges,
    ...(maySeeMoney(actor, householdId) ? { harmMinorUnits, withheldMinorUnits, refundMinorUnits } : {}),
    lines: lines.map((line) => presentLine(line, actor)),
  };
}

function presentLine(line: WithdrawnLine, actor: Actor) {
  const { lineId, units, grams, placements, leftUnits, leftGrams } = line;
  return {
    lineId,
    units,
    grams,
    takenGrams: placements.reduce((sum, placement) => sum + placement.grams, 0),
    leftUnits,
    leftGrams,
    ...(maySeeWithdrawals(actor) ? { placements: placements.map((placement) => ({ ...placement })) } : {}),
  };
}
