import type { Tx } from '@sheafbook/db';
import {
  accounts,
  buys,
  calendarEvents,
  containers,
  containerWishes,
  depositAsks,
  eaters,
  equipmentItems,
  equipmentUnits,
  helperGrants,
  householdContacts,
  householdGuidelines,
  householdPlans,
  households,
  invitations,
  loans,
  noticeReadings,
  notices,
  offerContainers,
  offers,
  offerTurns,
  type PersonRow,
  persons,
  pickUps,
  places,
  pledgeCeilings,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, gt, inArray, isNull, ne, or, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** Whose leaving is asked about; every statement here is about this one household. */
export type Subject = { readonly storehouseId: string; readonly householdId: string };

export function listPresentPersons(tx: Tx, { storehouseId, householdId }: Subject): Promise<PersonRow[]> {
  return tx
    .select()
    .from(persons)
    .where(
      and(
        eq(persons.storehouseId, storehouseId),
        eq(persons.householdId, householdId),
        isNull(persons.leftOn),
      ),
    )
    .orderBy(persons.personId);
}

/** Accounts of money in the household's name that are not at zero. */
export function listMoneyLeft(tx: Tx, { storehouseId, householdId }: Subject) {
  return tx
    .select({
      kind: accounts.kind,
      minorUnits: sql`${accounts.inflow} - ${accounts.outflow}`.mapWith(Number),
      buyId: buys.buyId,
      buyName: buys.name,
      thing: equipmentItems.name,
    })
    .from(accounts)
    .leftJoin(buys, joinOn(buys, accounts, 'buyId', 'causeId'))
    .leftJoin(loans, joinOn(loans, accounts, 'loanId', 'causeId'))
    .leftJoin(equipmentUnits, joinOn(equipmentUnits, loans, 'equipmentUnitId'))
    .leftJoin(equipmentItems, joinOn(equipmentItems, equipmentUnits, 'equipmentItemId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.ownerId, householdId),
        inArray(accounts.kind, ['household', 'buy_deposit', 'loan_deposit']),
        ne(accounts.inflow, accounts.outflow),
      ),
    )
    .orderBy(accounts.kind, accounts.accountId);
}

export type OpenBuyRow = { buy_id: string; name: string; stage: string; because: string };

/**
 * Buys that still bind the household: by a pledge, by mass it is promised, or by a withdrawal after ordering, whose
 * remaining costs are charged when the buy is shared out (job map 4.7).
 */
export async function listOpenBuys(tx: Tx, { storehouseId, householdId }: Subject): Promise<OpenBuyRow[]> {
  return tx.execute<OpenBuyRow>(sql`
    select b.buy_id, b.name, b.stage, o.because from book.buy b
    cross join lateral (
      select case
        when exists (select from book.pledge p where p.storehouse_id = b.storehouse_id and p.buy_id = b.buy_id
          and p.household_id = ${householdId} and p.withdrawn_at is null) then 'pledge'
        when exists (select from book.allotment a where a.storehouse_id = b.storehouse_id and a.buy_id = b.buy_id
          and a.owner_id = ${householdId} and a.grams > 0) then 'allotment'
        when exists (select from book.withdrawal w where w.storehouse_id = b.storehouse_id and w.buy_id = b.buy_id
          and w.household_id = ${householdId} and w.stage_then in ('ordered', 'landed', 'shared-out')) then 'withdrawal'
        end as because) o
    where b.storehouse_id = ${storehouseId} and b.stage not in ('closed', 'called-off') and o.because is not null
    order by b.name, b.buy_id`);
}

export type PromiseRow = {
  what: 'on-loan' | 'booked' | 'packing-day';
  id: string;
  name: string;
  stage: string;
};

/**
 * What equipment and packing days still bind the household: a thing that it has or has booked, and a day that is to pack
 * for it or did and is not settled, so that its charge is still to come.
 */
export async function listPromises(tx: Tx, { storehouseId, householdId }: Subject): Promise<PromiseRow[]> {
  return tx.execute<PromiseRow>(sql`
    select case b.state when 'out' then 'on-loan' else 'booked' end as what, b.booking_id as id, i.name, b.state as stage
    from book.booking b
    join book.equipment_item i on i.storehouse_id = b.storehouse_id and i.equipment_item_id = b.equipment_item_id
    where b.storehouse_id = ${storehouseId} and b.household_id = ${householdId}
      and b.state in ('asked', 'offered', 'booked', 'out')
    union all
    select 'packing-day', s.packing_session_id, s.name, s.stage
    from book.packing_session s
    where s.storehouse_id = ${storehouseId} and s.stage in ('open', 'running', 'signed')
      and (exists (select from book.packing_wish w where w.storehouse_id = s.storehouse_id
          and w.packing_session_id = s.packing_session_id and w.household_id = ${householdId})
        or exists (select from book.packing_slot t where t.storehouse_id = s.storehouse_id
          and t.packing_session_id = s.packing_session_id and t.household_id = ${householdId}
          and t.state in ('booked', 'waiting'))
        or exists (select from book.packing_bag g where g.storehouse_id = s.storehouse_id
          and g.packing_session_id = s.packing_session_id and g.household_id = ${householdId}))
    order by 1, 3, 2`);
}

export type HoldingRow = {
  lot_id: string;
  vessel_id: string;
  /** Null for the kitchen. */
  vessel_code: string | null;
  food: string;
  food_es: string;
  grams: number;
  waiting_grams: number;
  is_on_hold: boolean;
};

/**
 * Everything that the household owns in bags, containers and its kitchen. What of a bag still waits at the store is what splits gave
 * and no pick-up fetched, and never more than the bag has: fetching moves no grams, since a place is no account.
 */
export async function listHoldings(tx: Tx, { storehouseId, householdId }: Subject): Promise<HoldingRow[]> {
  return tx.execute<HoldingRow>(sql`
    select a.unit_id as lot_id, a.vessel_id, coalesce(b.bag_code, c.container_code) as vessel_code,
      f.name_en as food, f.name_es as food_es, (a.inflow - a.outflow)::double precision as grams,
      greatest(0, least(given.grams - fetched.grams, a.inflow - a.outflow))::double precision as waiting_grams,
      exists (select from book.held h where h.storehouse_id = a.storehouse_id and h.vessel_id = a.vessel_id) as is_on_hold
    from book.account a
    join book.lot l on l.storehouse_id = a.storehouse_id and l.lot_id = a.unit_id
    join book.food f on f.storehouse_id = l.storehouse_id and f.food_id = l.food_id
    left join book.bag b on b.storehouse_id = a.storehouse_id and b.bag_id = a.vessel_id
    left join book.container c on c.storehouse_id = a.storehouse_id and c.container_id = a.vessel_id
    cross join lateral (
      select coalesce(sum(sp.grams), 0) as grams from book.share_piece sp
      join book.split s on s.storehouse_id = sp.storehouse_id and s.split_id = sp.split_id and s.undone_at is null
      where sp.storehouse_id = a.storehouse_id and sp.bag_id = a.vessel_id and sp.owner_id = a.owner_id) given
    cross join lateral (
      select coalesce(sum(pp.grams), 0) as grams from book.pick_up_piece pp
      join book.pick_up p on p.storehouse_id = pp.storehouse_id and p.pick_up_id = pp.pick_up_id
      where pp.storehouse_id = a.storehouse_id and pp.bag_id = a.vessel_id and p.household_id = a.owner_id) fetched
    where a.storehouse_id = ${storehouseId} and a.owner_id = ${householdId} and a.kind = 'mass'
      and a.vessel_kind in ('bag', 'container', 'kitchen') and a.inflow > a.outflow
    order by vessel_code, a.account_id`);
}

/** The seat's name replaces the household's own. */
export async function updateHouseholdLeft(
  tx: Tx,
  { storehouseId, householdId }: Subject,
  left: { name: string; leftOn: string; version: number },
) {
  const [row] = await tx
    .update(households)
    .set(left)
    .where(and(eq(households.storehouseId, storehouseId), eq(households.householdId, householdId)))
    .returning();
  assert(row, 'the household was locked before');
  return row;
}

/** Parts a person from their login, which keeps its other storehouses and may be invited here again. */
export async function updatePersonsLeft(
  tx: Tx,
  leavers: { storehouseId: string; personIds: readonly string[] },
  left: { name: string; leftOn: string },
): Promise<void> {
  await tx
    .update(persons)
    .set({ ...left, loginId: null })
    .where(
      and(eq(persons.storehouseId, leavers.storehouseId), inArray(persons.personId, [...leavers.personIds])),
    );
}

/** What these persons might do for other households. */
export async function updateHelpEnded(
  tx: Tx,
  leavers: { storehouseId: string; personIds: readonly string[] },
  endedAt: Date,
): Promise<void> {
  await tx
    .update(helperGrants)
    .set({ endedAt })
    .where(
      and(
        eq(helperGrants.storehouseId, leavers.storehouseId),
        inArray(helperGrants.personId, [...leavers.personIds]),
        isNull(helperGrants.endedAt),
      ),
    );
}

/** What others might do for this household; why they did is the household's own and leaves with it. */
export async function updateHelpersEnded(
  tx: Tx,
  { storehouseId, householdId }: Subject,
  endedAt: Date,
): Promise<void> {
  await tx
    .update(helperGrants)
    .set({
      endedAt: sql`coalesce(${helperGrants.endedAt}, ${endedAt.toISOString()}::timestamptz)`,
      reason: '',
    })
    .where(and(eq(helperGrants.storehouseId, storehouseId), eq(helperGrants.householdId, householdId)));
}

export async function updateInvitationsWithdrawn(
  tx: Tx,
  { storehouseId, householdId }: Subject,
  withdrawnAt: Date,
): Promise<void> {
  await tx
    .update(invitations)
    .set({ withdrawnAt })
    .where(
      and(
        eq(invitations.storehouseId, storehouseId),
        eq(invitations.householdId, householdId),
        isNull(invitations.usedAt),
        isNull(invitations.withdrawnAt),
      ),
    );
}

/** Whoever signed for a share signed with a name. */
export async function updatePickUpsSigned(
  tx: Tx,
  { storehouseId, householdId }: Subject,
  signedBy: string,
): Promise<void> {
  await tx
    .update(pickUps)
    .set({ signedBy })
    .where(
      and(
        eq(pickUps.storehouseId, storehouseId),
        eq(pickUps.householdId, householdId),
        ne(pickUps.signedBy, ''),
      ),
    );
}

/** That a deposit was waived stays, and by whom; the hardship behind it does not. */
export async function updateWaiversForgotten(tx: Tx, { storehouseId, householdId }: Subject): Promise<void> {
  await tx
    .update(depositAsks)
    .set({ waiverReason: 'no longer kept' })
    .where(
      and(
        eq(depositAsks.storehouseId, storehouseId),
        eq(depositAsks.householdId, householdId),
        ne(depositAsks.waiverReason, ''),
      ),
    );
}

export async function updateContainerNotesForgotten(
  tx: Tx,
  { storehouseId, householdId }: Subject,
): Promise<void> {
  await tx
    .update(containers)
    .set({ note: '' })
    .where(and(eq(containers.storehouseId, storehouseId), eq(containers.householdId, householdId)));
}

/** What it still offers goes with it, to no other member and to no pantry. */
export async function updateOffersTakenBack(
  tx: Tx,
  { storehouseId, householdId }: Subject,
  endedAt: Date,
): Promise<void> {
  const own = and(eq(offers.storehouseId, storehouseId), eq(offers.householdId, householdId));
  await tx.update(offers).set({ goesToPantry: false }).where(own);
  await tx
    .update(offerContainers)
    .set({ endedAt, endedHow: 'taken-back' })
    .where(
      and(
        eq(offerContainers.storehouseId, storehouseId),
        inArray(offerContainers.offerId, tx.select({ id: offers.offerId }).from(offers).where(own)),
        gt(offerContainers.closesAt, endedAt),
        isNull(offerContainers.endedAt),
      ),
    );
}

/** Tables of which nothing stays behind. */
const OWN_TABLES = [
  eaters,
  householdPlans,
  householdGuidelines,
  householdContacts,
  pledgeCeilings,
  containerWishes,
  calendarEvents,
  places, // with their record of warmth
  offerTurns,
] as const;

/** What was told to the household alone, with who read it; what its persons read of the rest. */
export async function deleteOwnNotices(tx: Tx, { storehouseId, householdId }: Subject): Promise<void> {
  const ownIds = tx
    .select({ noticeId: notices.noticeId })
    .from(notices)
    .where(and(eq(notices.storehouseId, storehouseId), eq(notices.householdId, householdId)));
  await tx
    .delete(noticeReadings)
    .where(
      and(
        eq(noticeReadings.storehouseId, storehouseId),
        or(eq(noticeReadings.householdId, householdId), inArray(noticeReadings.noticeId, ownIds)),
      ),
    );
  await tx
    .delete(notices)
    .where(and(eq(notices.storehouseId, storehouseId), eq(notices.householdId, householdId)));
}

export async function deleteOwnThings(tx: Tx, { storehouseId, householdId }: Subject): Promise<void> {
  for (const table of OWN_TABLES)
    await tx
      .delete(table)
      .where(and(eq(table.storehouseId, storehouseId), eq(table.householdId, householdId)));
}
