import type { Tx } from '@sheafbook/db';
import {
  buys,
  households,
  type NoticeRow,
  noticeReadings,
  notices,
  persons,
  pledges,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, inArray, isNull, lt, or, type SQL, sql } from 'drizzle-orm';
import { type Actor, isStorehouseItself } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { joinOn } from '../../platform/join-on.ts';
import { newId } from '../../platform/new-id.ts';
import { pathIn } from '../../platform/path-in.ts';
import { Problem } from '../../platform/problem.ts';
import { inSpanish } from '../../platform/spoken/spanish.ts';
import { dayOf } from '../../platform/storehouse-day.ts';
import type { NoticeQuery } from './schema.ts';

/** Whom a notice is for; `buy` are the households that pledged in it. */
export type Audience =
  | { readonly to: 'everyone' }
  | { readonly to: 'duty'; readonly duty: string }
  | { readonly to: 'household'; readonly householdId: string }
  | { readonly to: 'buy'; readonly buyId: string };

export type NoticeDraft = {
  readonly kind:
    | 'written'
    | 'stage'
    | 'landing-moved'
    | 'held'
    | 'released'
    | 'packing'
    | 'offer'
    | 'equipment';
  readonly audience: Audience;
  readonly about: string;
  /** In Spanish, where it has a name of its own there. */
  readonly aboutEs?: string;
  readonly says: string;
  readonly buyId?: string | null;
  readonly dueOn?: string | null;
  /** Beneath the storehouse's address, such as `/buys/…`. */
  readonly path?: string;
  readonly isSafety?: boolean;
};

/**
 * Writes a notice in the transaction of whatever it is about, so that neither is there without the other. What the book
 * says itself is kept in both languages; what a person wrote, as it was written.
 */
export async function writeNotice(tx: Tx, context: Context, draft: NoticeDraft): Promise<string> {
  const { storehouseId, personId } = context.actor;
  const { audience, says, kind } = draft;
  const noticeId = newId(context);
  await tx.insert(notices).values({
    ...{ storehouseId, noticeId, kind, says, about: draft.about, audience: audience.to },
    aboutEs: draft.aboutEs ?? '',
    saysEs: kind === 'written' ? says : inSpanish(says),
    duty: audience.to === 'duty' ? audience.duty : null,
    householdId: audience.to === 'household' ? audience.householdId : null,
    buyId: audience.to === 'buy' ? audience.buyId : (draft.buyId ?? null),
    dueOn: draft.dueOn ?? null,
    path: draft.path === undefined ? '' : pathIn(storehouseId, draft.path),
    isSafety: draft.isSafety ?? false,
    writtenBy: isStorehouseItself(context.actor) ? null : personId,
    writtenAt: context.now(),
  });
  return noticeId;
}

/**
 * Those of the book that are for the actor: for everyone, a duty held, the household acted for, a buy it pledged in; and
 * that a landing was moved, for whoever helps to take it in.
 */
const isFor = ({ storehouseId, householdId, duties }: Actor): SQL | undefined =>
  and(
    eq(notices.storehouseId, storehouseId),
    isNull(notices.withdrawnAt),
    or(
      eq(notices.audience, 'everyone'),
      duties.size === 0 ? undefined : inArray(notices.duty, [...duties]),
      householdId === null ? undefined : eq(notices.householdId, householdId),
      duties.has('packing_lead')
        ? and(eq(notices.audience, 'buy'), eq(notices.kind, 'landing-moved'))
        : undefined,
      householdId === null
        ? undefined
        : and(
            eq(notices.audience, 'buy'),
            sql`exists (select from ${pledges} where ${pledges.storehouseId} = ${storehouseId}
              and ${pledges.buyId} = ${notices.buyId} and ${pledges.householdId} = ${householdId})`,
          ),
    ),
  );

/** What was told before somebody came is not theirs to answer for. */
const isSinceJoining = ({ storehouseId, personId, timeZone }: Actor): SQL =>
  sql`${dayOf(sql`${notices.writtenAt}`, timeZone)} >= (select ${persons.joinedOn} from ${persons}
    where ${persons.storehouseId} = ${storehouseId} and ${persons.personId} = ${personId})`;

const ofReader = ({ personId, householdId }: Actor): SQL | undefined =>
  and(
    eq(noticeReadings.storehouseId, notices.storehouseId),
    eq(noticeReadings.noticeId, notices.noticeId),
    eq(noticeReadings.personId, personId),
    householdId === null ? isNull(noticeReadings.householdId) : eq(noticeReadings.householdId, householdId),
  );

/** Of the `open`, everything that waits for an acknowledgement; searched without regard to capitals. */
function isWanted({ state, q }: Pick<NoticeQuery, 'state' | 'q'>): SQL | undefined {
  return and(
    state === 'unread' ? isNull(noticeReadings.readAt) : undefined,
    state === 'open' ? isNull(noticeReadings.acknowledgedAt) : undefined,
    q === ''
      ? undefined
      : sql`position(lower(${q}) in lower(${notices.about} || ' ' || ${notices.aboutEs} || ' ' || ${notices.says} || ' ' || ${notices.saysEs})) > 0`,
  );
}

const ofBuy = joinOn(buys, notices, 'buyId');

/** Newest first; `after` is the id that the page before ended with. */
export async function listNotices(
  tx: Tx,
  actor: Actor,
  query: Pick<NoticeQuery, 'after' | 'limit' | 'state' | 'q'>,
) {
  return tx
    .select({
      notice: notices,
      readAt: noticeReadings.readAt,
      acknowledgedAt: noticeReadings.acknowledgedAt,
      writerName: persons.name,
      buyName: buys.name,
    })
    .from(notices)
    .leftJoin(persons, joinOn(persons, notices, 'personId', 'writtenBy'))
    .leftJoin(buys, ofBuy)
    .leftJoin(noticeReadings, ofReader(actor))
    .where(
      and(
        isFor(actor),
        isSinceJoining(actor),
        isWanted(query),
        query.after === undefined ? undefined : lt(notices.noticeId, query.after),
      ),
    )
    .orderBy(desc(notices.noticeId))
    .limit(query.limit + 1);
}
export type NoticeToMe = Awaited<ReturnType<typeof listNotices>>[number];

/** How many are unread, and how many about safety wait to be acknowledged. */
export async function countUnread(tx: Tx, actor: Actor): Promise<{ unread: number; safetyOpen: number }> {
  const [row] = await tx
    .select({
      unread: sql`count(*) filter (where ${noticeReadings.readAt} is null)`.mapWith(Number),
      safetyOpen:
        sql`count(*) filter (where ${notices.isSafety} and ${noticeReadings.acknowledgedAt} is null)`.mapWith(
          Number,
        ),
    })
    .from(notices)
    .leftJoin(noticeReadings, ofReader(actor))
    .where(and(isFor(actor), isSinceJoining(actor)));
  assert(row, 'an aggregate without group by returns one row');
  return row;
}

/** One that is for the actor. */
export async function loadNoticeToMe(tx: Tx, actor: Actor, noticeId: string): Promise<NoticeRow> {
  const [row] = await tx
    .select()
    .from(notices)
    .where(and(isFor(actor), eq(notices.noticeId, noticeId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'notice' });
  return row;
}

/** Reads it, and acknowledges it if that is wished; what was read or acknowledged before keeps its time. */
export async function upsertReading(
  tx: Tx,
  reading: typeof noticeReadings.$inferInsert,
): Promise<{ readAt: Date; acknowledgedAt: Date | null }> {
  const { storehouseId, noticeId, personId, householdId } = noticeReadings;
  const [row] = await tx
    .insert(noticeReadings)
    .values(reading)
    .onConflictDoUpdate({
      target: [storehouseId, noticeId, personId, householdId],
      set: { acknowledgedAt: sql`coalesce(${noticeReadings.acknowledgedAt}, excluded.acknowledged_at)` },
    })
    .returning({ readAt: noticeReadings.readAt, acknowledgedAt: noticeReadings.acknowledgedAt });
  assert(row, 'an upsert returns its row');
  return row;
}

/** Any notice of the storehouse; those to households need the task `notice`. */
export async function loadNotice(tx: Tx, storehouseId: string, noticeId: string): Promise<NoticeRow> {
  const [row] = await tx
    .select()
    .from(notices)
    .where(and(eq(notices.storehouseId, storehouseId), eq(notices.noticeId, noticeId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'notice' });
  return row;
}

export async function updateWithdrawn(tx: Tx, notice: NoticeRow, withdrawnAt: Date): Promise<void> {
  await tx
    .update(notices)
    .set({ withdrawnAt })
    .where(and(eq(notices.storehouseId, notice.storehouseId), eq(notices.noticeId, notice.noticeId)));
}

/** What was written to whom, newest first, with how many persons have read and acknowledged it. */
export async function listWritten(
  tx: Tx,
  storehouseId: string,
  page: { after: string | undefined; limit: number; kinds: readonly string[] },
) {
  const countOf = (column: typeof noticeReadings.readAt | typeof noticeReadings.acknowledgedAt) =>
    sql`(select count(${column}) from ${noticeReadings} where ${noticeReadings.storehouseId} = ${storehouseId}
      and ${noticeReadings.noticeId} = ${notices.noticeId})`.mapWith(Number);
  return tx
    .select({
      notice: notices,
      householdName: households.name,
      buyName: buys.name,
      read: countOf(noticeReadings.readAt),
      acknowledged: countOf(noticeReadings.acknowledgedAt),
    })
    .from(notices)
    .leftJoin(households, joinOn(households, notices, 'householdId'))
    .leftJoin(buys, ofBuy)
    .where(
      and(
        eq(notices.storehouseId, storehouseId),
        isNull(notices.withdrawnAt),
        inArray(notices.kind, [...page.kinds]),
        page.after === undefined ? undefined : lt(notices.noticeId, page.after),
      ),
    )
    .orderBy(desc(notices.noticeId))
    .limit(page.limit + 1);
}
export type WrittenNotice = Awaited<ReturnType<typeof listWritten>>[number];

/** The households that one notice is for, with when somebody acknowledged it for each. */
export async function listReach(tx: Tx, notice: NoticeRow) {
  const { storehouseId, noticeId } = notice;
  const acknowledgedAt = sql<string | null>`(select min(r.acknowledged_at) from book.notice_acknowledged r
    where r.storehouse_id = ${storehouseId} and r.notice_id = ${noticeId}
      and r.household_id = household.household_id)`; // spelt out: a column of the only table loses its table's name
  return tx
    .select({ householdId: households.householdId, name: households.name, acknowledgedAt })
    .from(households)
    .where(
      and(
        eq(households.storehouseId, storehouseId),
        isNull(households.leftOn),
        notice.householdId === null ? undefined : eq(households.householdId, notice.householdId),
        notice.audience !== 'buy'
          ? undefined
          : sql`exists (select from ${pledges} where ${pledges.storehouseId} = ${storehouseId}
              and ${pledges.buyId} = ${notice.buyId} and ${pledges.householdId} = ${households.householdId})`,
      ),
    )
    .orderBy(asc(households.seat));
}
export type Reached = Awaited<ReturnType<typeof listReach>>[number];
