import type { Tx } from '@sheafbook/db';
import { type Actor, hasDuty } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { listOpenBills } from '../invoice/queries.ts';
import type { OpenItem } from './open-item.ts';
import { listBuysById } from './queries.ts';

const mayPayBills = (actor: Actor): boolean => hasDuty(actor, 'treasurer');

/** Bills that name a day and are not paid yet (job map 3.2, question 4). */
export async function listBillItems(tx: Tx, { actor }: Context, root: string): Promise<OpenItem[]> {
  if (!mayPayBills(actor)) return [];
  const open = (await listOpenBills(tx, actor.storehouseId)).filter(({ dueOn }) => dueOn !== null);
  const buyIds = open.flatMap(({ buyId }) => buyId ?? []);
  const buys = await listBuysById(tx, actor.storehouseId, buyIds);
  return open.map(({ supplier, number, invoiceId, buyId, dueOn, minorUnits }) => ({
    kind: 'bill-due',
    words: `Pay ${supplier} its bill ${number} by ${dueOn}.`,
    buy: buys.find((buy) => buy.buyId === buyId) ?? null,
    about: `${supplier} ${number}`,
    part: invoiceId ?? '',
    ...{ dueOn, dueAt: null, minorUnits },
    path: `${root}/suppliers-owed`,
  }));
}
