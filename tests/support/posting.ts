import { randomBytes } from 'node:crypto';
import type { Tx } from '@sheafbook/db';
import { foods, lots, owners, units, vessels } from '@sheafbook/db/tables';
import type { MovementDraft, VesselKind } from '@sheafbook/ledger';
import { and, eq } from 'drizzle-orm';
import type { Context } from '../../apps/api/src/platform/context.ts';
import { type PostedEntry, postEntry } from '../../apps/api/src/platform/post-entry.ts';
import { withTx } from '../../apps/api/src/platform/with-tx.ts';
import type { TestApp } from './app.ts';
import type { TestHousehold } from './household.ts';
import type { TestStorehouse } from './storehouse.ts';

/** A person of a storehouse as the use cases see one, on the app's own unprivileged role. */
export function aContext(app: TestApp, storehouse: TestStorehouse, household: TestHousehold): Context {
  return {
    db: app.db,
    sql: app.sql,
    now: () => new Date(app.clock.now),
    randomBytes,
    actor: {
      loginId: '',
      personId: household.personId,
      storehouseId: storehouse.storehouseId,
      currency: 'USD',
      timeZone: 'America/Chicago',
      duties: new Set(),
      householdId: household.householdId,
      isHelping: false,
    },
  };
}

/** Posts drafts as one entry in a transaction of its own. */
export function postDrafts(
  context: Context,
  drafts: readonly MovementDraft[],
  header: { what?: string; onDay?: string; buyId?: string } = {},
): Promise<PostedEntry> {
  const entry = { what: 'told-by-a-test', onDay: '2026-09-15', ...header, drafts };
  return withTx(context, (tx) => postEntry(tx, context, entry));
}

/** A lot of hard wheat that somebody brought, and the vessels and owners that its grams may go through. */
export type TestLot = {
  lotId: string;
  bagId: string;
  outside: Readonly<Record<'supplier' | 'eaten' | 'unexplained', string>>;
  unassignedId: string;
};

export function aLot(context: Context): Promise<TestLot> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const [unit] = await tx.insert(units).values({ storehouseId, kind: 'lot' }).returning();
    const lotId = unit?.unitId ?? '';
    const [food] = await tx
      .select()
      .from(foods)
      .where(and(eq(foods.storehouseId, storehouseId), eq(foods.foodCode, 'wheat-hard-red-winter')));
    const madeOn = '2026-09-01';
    const of = { foodId: food?.foodId ?? '', originNote: 'brought by a neighbour', madeOn };
    await tx.insert(lots).values({ storehouseId, lotId, ...of });
    const [unassigned] = await tx
      .select()
      .from(owners)
      .where(and(eq(owners.storehouseId, storehouseId), eq(owners.kind, 'unassigned')));
    return {
      lotId,
      bagId: await insertVessel(tx, storehouseId, 'bag'),
      outside: {
        supplier: await findVessel(tx, storehouseId, 'supplier'),
        eaten: await findVessel(tx, storehouseId, 'eaten'),
        unexplained: await findVessel(tx, storehouseId, 'unexplained'),
      },
      unassignedId: unassigned?.ownerId ?? '',
    };
  });
}

export function aVessel(context: Context, kind: 'bag' | 'container'): Promise<string> {
  return withTx(context, (tx) => insertVessel(tx, context.actor.storehouseId, kind));
}

/** A household's kitchen has the household's own id. */
export function aKitchen(context: Context, householdId: string): Promise<string> {
  return withTx(context, (tx) => insertVessel(tx, context.actor.storehouseId, 'kitchen', householdId));
}

async function insertVessel(
  tx: Tx,
  storehouseId: string,
  kind: VesselKind,
  vesselId?: string,
): Promise<string> {
  const [row] = await tx.insert(vessels).values({ storehouseId, kind, vesselId }).returning();
  return row?.vesselId ?? '';
}

async function findVessel(tx: Tx, storehouseId: string, kind: VesselKind): Promise<string> {
  const [row] = await tx
    .select()
    .from(vessels)
    .where(and(eq(vessels.storehouseId, storehouseId), eq(vessels.kind, kind)));
  return row?.vesselId ?? '';
}

/** The running balance of an account by its parts, read behind the policies. */
export async function balanceOfAccount(
  app: TestApp,
  where: { kind: string; vesselId?: string; ownerId?: string; causeId?: string },
): Promise<number> {
  const [row] = await app.admin<
    { balance: string | null }[]
  >`select sum(inflow - outflow) as balance from book.account
    where kind = ${where.kind} and ${where.vesselId ? app.admin`vessel_id = ${where.vesselId}` : app.admin`true`}
      and ${where.ownerId ? app.admin`owner_id = ${where.ownerId}` : app.admin`true`}
      and ${where.causeId ? app.admin`cause_id = ${where.causeId}` : app.admin`true`}`;
  return Number(row?.balance ?? 0);
}
