import type { Tx } from '@sheafbook/db';
import type { BuyRow } from '@sheafbook/db/tables';
import { householdAccount } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { findDepositAsk } from '../deposit/queries.ts';
import { loadHeldDeposit } from '../deposit/use-cases.ts';
import { loadBalance } from '../money/queries.ts';
import { listWaiting } from '../pick-up/use-cases.ts';
import { listLoanItems } from './loan-items.ts';
import { listOfferItems } from './offer-items.ts';
import type { OpenItem } from './open-item.ts';
import { type Appointment, listPledgedBuyIds } from './queries.ts';
import { dueAtInstant, dueOf } from './steps.ts';

export type Open = { readonly buys: readonly BuyRow[]; readonly appointments: readonly Appointment[] };
type Own = { readonly householdId: string; readonly root: string };

/** What waits for the actor's household: to pledge, to pay, to fetch. */
export async function listOwnItems(tx: Tx, context: Context, open: Open, root: string): Promise<OpenItem[]> {
  const { householdId } = context.actor;
  if (householdId === null) return [];
  const own = { householdId, root };
  return [
    ...listOwnAppointments(context, open, own),
    ...(await listUnpledged(tx, context, open, own)),
    ...(await listOwnDeposits(tx, context, open, own)),
    ...(await listWaitingFood(tx, context, open, own)),
    ...(await listLoanItems(tx, context, own)),
    ...(await listOfferItems(tx, context, own)),
    ...(await listOwnBalance(tx, context, own)),
  ];
}

function listOwnAppointments({ actor }: Context, { appointments }: Open, own: Own): OpenItem[] {
  return appointments
    .filter(({ pickUp }) => pickUp.householdId === own.householdId)
    .flatMap(({ pickUp: { startsAt, endsAt }, buy }) =>
      startsAt === null
        ? []
        : [
            {
              ...dueAtInstant(startsAt, actor.timeZone),
              endsAt,
              kind: 'pick-up' as const,
              words: `Fetch your food of ${buy.name} at the time you chose.`,
              buy,
              minorUnits: null,
              path: `${own.root}/pick-ups`,
            },
          ],
    );
}

/** Gatherings that take new pledges still, in which the household has none. */
async function listUnpledged(tx: Tx, context: Context, open: Open, own: Own): Promise<OpenItem[]> {
  const { actor, now } = context;
  const pledged = await listPledgedBuyIds(tx, actor.storehouseId, own.householdId);
  return open.buys
    .filter((buy) => buy.stage === 'gathering' && buy.gatheringClosesAt > now() && !pledged.has(buy.buyId))
    .map((buy) => ({
      ...dueOf(buy, actor),
      kind: 'pledge-closing' as const,
      words: `${buy.name} gathers pledges, and you have made none.`,
      buy,
      minorUnits: null,
      path: `${own.root}/buys/${buy.buyId}/pledges`,
    }));
}

async function listOwnDeposits(tx: Tx, context: Context, open: Open, own: Own): Promise<OpenItem[]> {
  const { storehouseId } = context.actor;
  const { householdId } = own;
  const items: OpenItem[] = [];
  for (const buy of open.buys.filter(({ stage }) => stage === 'fixed')) {
    const { buyId } = buy;
    const ask = await findDepositAsk(tx, storehouseId, { buyId, householdId });
    if (!ask || ask.waivedBy !== null) continue;
    const lacking = ask.askedMinorUnits - (await loadHeldDeposit(tx, storehouseId, { householdId, buyId }));
    if (lacking <= 0) continue;
    items.push({
      kind: 'deposit-due',
      words: `Your deposit on ${buy.name} is asked for by ${ask.dueOn}.`,
      buy,
      dueOn: ask.dueOn,
      dueAt: null,
      minorUnits: lacking,
      path: `${own.root}/buys/${buyId}/deposits/own`,
    });
  }
  return items;
}

/** Food to fetch for which no hour is chosen. What is on hold can't be fetched. */
async function listWaitingFood(tx: Tx, context: Context, open: Open, own: Own): Promise<OpenItem[]> {
  const hasHour = new Set(
    open.appointments
      .filter(({ pickUp }) => pickUp.householdId === own.householdId)
      .map(({ buy }) => buy.buyId),
  );
  const items: OpenItem[] = [];
  for (const buy of open.buys.filter(({ stage, buyId }) => stage === 'shared-out' && !hasHour.has(buyId))) {
    const { holdings } = await listWaiting(tx, context, buy);
    const free = holdings.filter((holding) => holding.householdId === own.householdId && !holding.isHeld);
    const [fetchUntil] = free.map((holding) => holding.fetchUntil).toSorted();
    if (fetchUntil === undefined) continue;
    items.push({
      kind: 'food-waiting',
      words: `Food of ${buy.name} waits for you; fetch it by ${fetchUntil}.`,
      buy,
      dueOn: fetchUntil,
      dueAt: null,
      minorUnits: null,
      path: `${own.root}/buys/${buy.buyId}/pick-ups`,
    });
  }
  return items;
}

/** What the household owes. The rules set no day for it, so it stands without a deadline. */
async function listOwnBalance(tx: Tx, { actor }: Context, own: Own): Promise<OpenItem[]> {
  const owed = await loadBalance(tx, actor.storehouseId, householdAccount(own.householdId));
  if (owed <= 0) return [];
  return [
    {
      kind: 'balance-due',
      words: 'You owe the storehouse what your statement shows.',
      buy: null,
      dueOn: null,
      dueAt: null,
      minorUnits: owed,
      path: `${own.root}/households/${own.householdId}/statement`,
    },
  ];
}
