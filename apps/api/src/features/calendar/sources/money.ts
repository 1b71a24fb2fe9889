import type { Tx } from '@sheafbook/db';
import { ageDebts } from '@sheafbook/ledger';
import type { Context } from '../../../platform/context.ts';
import { todayOf } from '../../../platform/today.ts';
import { loadHeldDeposit } from '../../deposit/use-cases.ts';
import { listDatedAmounts } from '../../statement/queries.ts';
import type { Appointment, Source } from '../appointment.ts';
import { listOpenDepositAsks } from '../queries.ts';

/**
 * By when one's own household pays. A calendar is shown over shoulders and kept by other programs, so no amount is in
 * it. What has been paid is asked for no more, so that its appointment is taken back.
 */
export const MONEY: Source = {
  words: {
    'deposit-due': {
      en: { title: (buy) => `${buy}: deposit due`, about: 'How much is asked for stands in Sheafbook.' },
      es: { title: (buy) => `${buy}: vence el depósito`, about: 'Cuánto se pide está en Sheafbook.' },
    },
    'balance-due': {
      en: { title: () => 'Pay what your statement shows', about: 'What is owed stands in Sheafbook.' },
      es: { title: () => 'Pagar lo que muestra su cuenta', about: 'Lo que se debe está en Sheafbook.' },
    },
  },
  list: async (tx, context) => {
    const { householdId } = context.actor;
    if (householdId === null) return [];
    return [
      ...(await listDeposits(tx, context, householdId)),
      ...(await listBalance(tx, context, householdId)),
    ];
  },
};

const OWN_MONEY = { status: 'confirmed', place: '', isBusy: false } as const;

async function listDeposits(tx: Tx, { actor }: Context, householdId: string): Promise<Appointment[]> {
  const { storehouseId } = actor;
  const asks = await listOpenDepositAsks(tx, storehouseId, householdId);
  const appointments: Appointment[] = [];
  for (const { ask, buy } of asks) {
    const { buyId } = buy;
    if ((await loadHeldDeposit(tx, storehouseId, { householdId, buyId })) >= ask.askedMinorUnits) continue;
    appointments.push({
      ...OWN_MONEY,
      kind: 'deposit-due',
      id: `${buyId}-${householdId}`, // each household of the buy has its own
      subject: buy.name,
      when: { on: ask.dueOn },
      item: { kind: 'buy', id: buyId },
      householdId,
      path: `/buys/${buyId}`,
    });
  }
  return appointments;
}

/** What is owed is due on the day of the oldest charge that is not paid in full. */
async function listBalance(tx: Tx, context: Context, householdId: string): Promise<Appointment[]> {
  const amounts = await listDatedAmounts(tx, context.actor.storehouseId, [householdId]);
  const { owesSinceOn } = ageDebts({ amounts, todayOn: todayOf(context) });
  if (owesSinceOn === null) return [];
  const owed = { kind: 'balance-due', id: householdId, subject: '', when: { on: owesSinceOn } };
  return [{ ...OWN_MONEY, ...owed, item: null, householdId, path: '/statement' }];
}
