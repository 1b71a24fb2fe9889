import * as ledger from '@sheafbook/ledger';
import type { Cost, shareCosts } from './costs.ts';

type Shared = ReturnType<typeof shareCosts>;

/**
 * The movements of a settled session: every cost goes into its clearing account and every share out of it, in one entry, so
 * that the account stands at 0.00 before and after, also when all of it is taken back.
 */
export function settlementDrafts(
  { costs, charges, storehouseMinorUnits }: Shared,
  { sessionId, ownerId }: { sessionId: string; ownerId: string },
): ledger.MovementDraft[] {
  return [
    ...piecesUsed(costs, { sessionId, ownerId }),
    ...costs.flatMap((cost) => (cost.minorUnits === 0 ? [] : costDrafts(cost, sessionId))),
    ...ledger.sessionSharedOut({
      sessionId,
      charges: charges.map(({ householdId, minorUnits }) => ({ householdId, amountMinorUnits: minorUnits })),
    }),
    ...(storehouseMinorUnits === 0
      ? []
      : ledger.sessionLossBorne({ sessionId, amountMinorUnits: storehouseMinorUnits })),
  ];
}

const piecesUsed = (costs: readonly Cost[], day: { sessionId: string; ownerId: string }) =>
  costs.flatMap(({ supplyId, pieces }) =>
    supplyId === null || pieces === null ? [] : ledger.piecesWentOut({ ...day, supplyId, pieces }),
  );

function costDrafts(cost: Cost, sessionId: string): ledger.MovementDraft[] {
  const { supplyId, itemId, paidBy, minorUnits: amountMinorUnits } = cost;
  if (supplyId !== null) return ledger.suppliesUsed({ sessionId, supplyId, amountMinorUnits });
  if (itemId !== null) return ledger.equipmentUsed({ sessionId, itemId, amountMinorUnits });
  if (paidBy === null) return ledger.lineTimeCharged({ sessionId, amountMinorUnits });
  const payer =
    paidBy.who === 'household'
      ? { householdId: paidBy.householdId }
      : { till: paidBy.till === 'cash' ? ('cash_tin' as const) : ('bank' as const) };
  return ledger.sessionSundry({ sessionId, paidBy: payer, amountMinorUnits });
}
