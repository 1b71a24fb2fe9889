import type { Tx } from '@sheafbook/db';
import type { BuyRow, OrderConsentRow } from '@sheafbook/db/tables';
import type { Missing } from '@sheafbook/ledger';
import type { Actor } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { pathIn } from '../../platform/path-in.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { type TxOptions, withTx } from '../../platform/with-tx.ts';
import { loadBuy } from '../buy/queries.ts';
import { isAboutDeposits, listMissingToOpen } from '../buy/use-cases.ts';
import { listMissingToShareOut } from '../charge/use-cases.ts';
import { lookAtClosing, seesDeposits } from '../close/use-cases.ts';
import { listMissingToFix } from '../fill/use-cases.ts';
import { listMissingToLand } from '../landing/use-cases.ts';
import { mayWriteNotices } from '../notice/use-cases.ts';
import { listOrderConsents } from '../order/queries.ts';
import { listMissingToOrder } from '../order/use-cases.ts';
import { listBillItems } from './bill-items.ts';
import { listDutyItems } from './duty-items.ts';
import { listKeeperItems } from './keeper-items.ts';
import { listLidItems } from './lid-items.ts';
import { byUrgency, type OpenItem } from './open-item.ts';
import { listOwnItems } from './own-items.ts';
import { listPackingItems } from './packing-items.ts';
import { pagesAt } from './pages.ts';
import { seesWhoPaid } from './policy.ts';
import { listAppointments, listOpenBuys } from './queries.ts';
import { listSealItems } from './seal-items.ts';
import { showMissing } from './show-missing.ts';
import { dueOf, stepFrom, whoMay } from './steps.ts';
import { listStockItems } from './stock-items.ts';

export type { ItemPart } from './open-item.ts';

export { dueOf, stepFrom, whoMay } from './steps.ts';

type AtStage = { readonly buy: BuyRow; readonly consents: readonly OrderConsentRow[] };

/**
 * Which stage a buy is at and what blocks the next (job map 3.1, question 10): the list that the next move itself would
 * be refused with, as far as the actor may see it. While a buy gathers this fills its bags, which reads every ceiling.
 */
export function readNextStep(context: Context, buyId: string) {
  const { actor } = context;
  const work = async (tx: Tx) => {
    const buy = await loadBuy(tx, actor.storehouseId, buyId);
    const consents = buy.stage === 'fixed' ? await listOrderConsents(tx, actor.storehouseId, buyId) : [];
    const missing = await listMissingNow(tx, context, { buy, consents });
    await noteDepositsSeen(tx, context, { buy, missing });
    return toView(actor, { buy, consents }, missing);
  };
  return withTx(context, work, { task: 'fill', isReadOnly: true });
}

export type NextStepView = Awaited<ReturnType<typeof readNextStep>>;

async function listMissingNow(tx: Tx, context: Context, at: AtStage): Promise<readonly Missing[]> {
  const { buy } = at;
  if (buy.stage === 'planning') return listMissingToOpen(tx, context, buy);
  if (buy.stage === 'gathering') return listMissingToFix(tx, context, buy);
  if (buy.stage === 'fixed') return listMissingToOrder(tx, context, at);
  if (buy.stage === 'ordered') return listMissingToLand(tx, buy);
  if (buy.stage === 'landed') return listMissingToShareOut(tx, buy);
  return buy.stage === 'shared-out' ? (await lookAtClosing(tx, context, buy)).missing : [];
}

/** Looking at the closing writes down itself who saw amounts there. */
async function noteDepositsSeen(
  tx: Tx,
  context: Context,
  { buy, missing }: { buy: BuyRow; missing: readonly Missing[] },
): Promise<void> {
  const { actor } = context;
  const isNoted = buy.stage === 'shared-out' && seesDeposits(actor);
  if (!seesWhoPaid(actor) || isNoted) return;
  const householdIds = missing.flatMap(({ code, ids = [] }) => (isAboutDeposits(code) ? ids : []));
  await notePrivateRead(tx, context, { householdIds, what: 'deposits', purpose: 'next step of a buy' });
}

function toView(actor: Actor, { buy, consents }: AtStage, missing: readonly Missing[]) {
  const buyPath = `${rootOf(actor)}/buys/${buy.buyId}`;
  const step = stepFrom(buy.stage);
  return {
    buy,
    step,
    due: dueOf(buy, actor),
    mayMove: step?.may(actor, consents) ?? false,
    who: step ? whoMay(step, actor, consents) : [],
    missing: showMissing(missing, actor, buyPath),
    action: step && { path: `${buyPath}/${step.path}`, body: step.bodyFor(actor, consents) },
    pages: pagesAt(buy.stage, actor, buyPath),
  };
}

/** Everything that needs the actor, of its own household and by its duties, the most urgent first. */
export function listNextSteps(context: Context) {
  const { actor } = context;
  const work = async (tx: Tx) => {
    await noteHelpersRead(tx, context, 'balance, deposits, pledges, pick-ups and stock');
    const items = await listOpenItems(tx, context);
    const householdIds = items.flatMap((item) => item.householdIds ?? []);
    await notePrivateRead(tx, context, { householdIds, what: 'notices', purpose: 'who was reached' });
    return { actor, now: context.now(), items: items.toSorted(byUrgency) };
  };
  return withTx(context, work, { ...openingFor(actor), isReadOnly: true });
}

/** What a transaction that lists open items opens: who must telephone is shown which households were not reached. */
export const openingFor = (actor: Actor): Pick<TxOptions, 'task'> =>
  mayWriteNotices(actor) ? { task: 'notice' } : {};

/**
 * The same inside a transaction of the actor's own that was opened by `openingFor`, in no order. Whoever calls it notes what
 * is read of others.
 */
export async function listOpenItems(tx: Tx, context: Context): Promise<OpenItem[]> {
  const { actor } = context;
  const buys = await listOpenBuys(tx, actor.storehouseId);
  const appointments = await listAppointments(tx, actor.storehouseId, context.now());
  const open = { buys, appointments };
  return [
    ...(await listOwnItems(tx, context, open, rootOf(actor))),
    ...(await listPackingItems(tx, context, rootOf(actor))),
    ...(await listSealItems(tx, context, rootOf(actor))),
    ...(await listLidItems(tx, context, rootOf(actor))),
    ...(await listKeeperItems(tx, context, rootOf(actor))),
    ...(await listBillItems(tx, context, rootOf(actor))),
    ...(await listStockItems(tx, context, rootOf(actor))),
    ...(await listDutyItems(tx, context, open, rootOf(actor))),
  ];
}

export type NextSteps = Awaited<ReturnType<typeof listNextSteps>>;

const rootOf = ({ storehouseId }: Actor): string => pathIn(storehouseId, '');
