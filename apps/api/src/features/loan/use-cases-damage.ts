import { partCharged } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadUnit, lockItem } from '../equipment/queries.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { findNextLoan, loadLoan, updateLoan } from './queries.ts';
import type { DamageWish } from './schema.ts';
import { readLoanInside } from './use-cases.ts';

/**
 * What is found damaged on a thing that is back: charged to whoever brought it, until it goes out again. From then on nobody can
 * tell whose it is (job map 8). The deposit has gone back by now, so all of it stands on the balance, and its household is told.
 */
export function chargeDamage(context: Context, loanId: string, { minorUnits, note }: DamageWish) {
  const { storehouseId, householdId: own } = context.actor;
  return withTx(context, async (tx) => {
    const { equipmentUnitId } = await loadLoan(tx, storehouseId, loanId);
    const { equipmentItemId: itemId } = await loadUnit(tx, storehouseId, equipmentUnitId);
    const item = await lockItem(tx, storehouseId, itemId);
    const loan = await loadLoan(tx, storehouseId, loanId);
    if (loan.inAt === null)
      throw new Problem('damage-not-now', {
        detail: 'It is out still. Say what the damage costs when it comes back.',
      });
    if (await findNextLoan(tx, loan))
      throw new Problem('damage-not-now', {
        detail: 'It went out again since, so nobody can tell whose damage it is.',
      });
    const { householdId } = loan;
    await postEntry(tx, context, {
      ...{ what: 'loan-damage', onDay: todayOf(context), subjectId: loanId, note },
      drafts: partCharged({ householdId, itemId, amountMinorUnits: minorUnits }),
      ...(own === householdId ? {} : { enteredFor: householdId }),
    });
    await updateLoan(tx, loan, { damageMinorUnits: (loan.damageMinorUnits ?? 0) + minorUnits });
    await writeNotice(tx, context, {
      ...{ kind: 'equipment', audience: { to: 'household', householdId }, about: item.name },
      says: `Something was found damaged on what you brought back, before it went out again: ${item.name}. Its loan says what it costs.`,
      path: `/equipment/${itemId}/loans/${loanId}`,
    });
    return readLoanInside(tx, context, loanId);
  });
}
