import type { Tx } from '@sheafbook/db';
import {
  accounts,
  depositAsks,
  entries,
  equipmentItems,
  type HouseholdRow,
  households,
  type InvoiceRow,
  invoices,
  movements,
} from '@sheafbook/db/tables';
import { type AccountKey, CHART, type MoneyKind } from '@sheafbook/ledger';
import { addDays, assert } from '@sheafbook/units';
import { and, between, eq, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';

/**
 * Locks a household against other money commands about it, so that two hands can't both pay out one credit or both
 * take in one receipt. A household that has left may still owe and pay.
 */
export async function lockHousehold(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<HouseholdRow> {
  const [household] = await tx
    .select()
    .from(households)
    .where(and(eq(households.storehouseId, storehouseId), eq(households.householdId, householdId)))
    .for('no key update');
  if (!household) throw new Problem('thing-not-found', { thing: 'household' });
  return household;
}

export async function loadInvoice(tx: Tx, storehouseId: string, invoiceId: string): Promise<InvoiceRow> {
  const [invoice] = await tx
    .select()
    .from(invoices)
    .where(and(eq(invoices.storehouseId, storehouseId), eq(invoices.invoiceId, invoiceId)));
  if (!invoice) throw new Problem('thing-not-found', { thing: 'invoice' });
  return invoice;
}

/** A thing whose repair is paid for must be the group's own. */
export async function refuseUnknownItem(tx: Tx, storehouseId: string, itemId: string): Promise<void> {
  const [item] = await tx
    .select({ id: equipmentItems.equipmentItemId })
    .from(equipmentItems)
    .where(and(eq(equipmentItems.storehouseId, storehouseId), eq(equipmentItems.equipmentItemId, itemId)));
  if (!item) throw fieldProblem('thing-not-found', 'itemId', 'There is no such equipment.');
}

/** The running balance of one money account, debit above zero; 0 while nothing was ever posted to it. */
export async function loadBalance(tx: Tx, storehouseId: string, key: AccountKey): Promise<number> {
  const [row] = await tx
    .select({ balance: sql`coalesce(sum(${accounts.inflow} - ${accounts.outflow}), 0)`.mapWith(Number) })
    .from(accounts)
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.kind, key.kind),
        key.ownerId === null ? isNull(accounts.ownerId) : eq(accounts.ownerId, key.ownerId),
        key.causeId === null ? isNull(accounts.causeId) : eq(accounts.causeId, key.causeId),
      ),
    );
  assert(row, 'an aggregate without group by returns one row');
  return row.balance;
}

/** What the store fund holds once this year's income and expenses are carried into it; below zero it is overdrawn. */
export async function sumFund(tx: Tx, storehouseId: string): Promise<number> {
  const [row] = await tx
    .select({ held: sql`coalesce(sum(${accounts.outflow} - ${accounts.inflow}), 0)`.mapWith(Number) })
    .from(accounts)
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        sql`${accounts.kind} = any(${sql.param(fundKinds)}::text[])`,
      ),
    );
  assert(row, 'an aggregate without group by returns one row');
  return row.held;
}

/** The kinds of account that end with the year: the 4000s and 5000s of the chart. */
const yearKinds: readonly MoneyKind[] = CHART.filter(({ number }) => /^[45]/.test(number)).map(
  ({ kind }) => kind,
);

/** The store fund and what the year's end carries into it. */
export const fundKinds: readonly MoneyKind[] = ['store_fund', ...yearKinds];

/** Income and expenses with what each came to through a day, those at nothing left out. */
export async function listYearAccounts(tx: Tx, storehouseId: string, throughOn: string) {
  const rows = await tx.execute<{ kind: MoneyKind; cause_id: string | null; balance: string }>(sql`
    with a as (select account_id, kind, cause_id from book.account
      where storehouse_id = ${storehouseId} and kind = any(${sql.param(yearKinds)}::text[])),
    m as (
      select a.*, m.entry_id, m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
      union all
      select a.*, m.entry_id, -m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id)
    select m.kind, m.cause_id, sum(m.amount) as balance
    from m join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    where e.on_day <= ${throughOn}::date
    group by m.account_id, m.kind, m.cause_id having sum(m.amount) <> 0`);
  return rows.map((row) => ({ kind: row.kind, causeId: row.cause_id, balance: Number(row.balance) }));
}

/** An unreversed receipt of the same amount from the same household, at most two days before or after. */
export async function findSamePayment(
  tx: Tx,
  storehouseId: string,
  payment: { householdId: string; minorUnits: number; onDay: string },
) {
  const [row] = await tx
    .select({ entryNo: entries.entryNo, onDay: entries.onDay })
    .from(accounts)
    .innerJoin(movements, joinOn(movements, accounts, 'sourceId', 'accountId'))
    .innerJoin(entries, joinOn(entries, movements, 'entryId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.kind, 'household'),
        eq(accounts.ownerId, payment.householdId),
        eq(movements.amount, payment.minorUnits),
        eq(entries.what, 'payment-received'),
        between(entries.onDay, addDays(payment.onDay, -2), addDays(payment.onDay, 2)),
        sql`not exists (select from book.entry r where r.storehouse_id = ${storehouseId}
          and r.reverses_id = ${entries.entryId})`,
      ),
    )
    .limit(1);
  return row;
}

/** Each household with a deposit asked or held for a buy, in seat order. */
export async function listDepositsOfBuy(tx: Tx, storehouseId: string, buyId: string) {
  return tx
    .select({
      householdId: households.householdId,
      seat: households.seat,
      name: households.name,
      heldMinorUnits: sql`coalesce(${accounts.outflow} - ${accounts.inflow}, 0)`.mapWith(Number),
      askedMinorUnits: depositAsks.askedMinorUnits,
      dueOn: depositAsks.dueOn,
      isWaived: sql<boolean>`${depositAsks.waivedBy} is not null`,
    })
    .from(households)
    .leftJoin(
      accounts,
      and(
        eq(accounts.storehouseId, households.storehouseId),
        eq(accounts.kind, 'buy_deposit'),
        eq(accounts.ownerId, households.householdId),
        eq(accounts.causeId, buyId),
      ),
    )
    .leftJoin(
      depositAsks,
      and(
        eq(depositAsks.storehouseId, households.storehouseId),
        eq(depositAsks.householdId, households.householdId),
        eq(depositAsks.buyId, buyId),
      ),
    )
    .where(
      and(
        eq(households.storehouseId, storehouseId),
        sql`(${depositAsks.householdId} is not null or ${accounts.accountId} is not null)`,
      ),
    )
    .orderBy(households.seat);
}
