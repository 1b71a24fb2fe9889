import type { Tx } from '@sheafbook/db';
import type { NoticeRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import {
  countUnread,
  listNotices,
  listReach,
  listWritten,
  loadNotice,
  loadNoticeToMe,
  updateWithdrawn,
  upsertReading,
  writeNotice,
} from './queries.ts';
import { findBuyName, findPresentHousehold } from './queries-named.ts';
import type { NoticeQuery, NoticeReadingWish, NoticeWish } from './schema.ts';

export { mayWriteNotices } from './policy.ts';
export { writeNotice } from './queries.ts';
export { listToTelephone } from './use-cases-unreached.ts';

/** What the actor was told since joining, newest first. */
export function readNotices(context: Context, query: NoticeQuery) {
  return withTx(context, async (tx) => {
    await noteHelpersRead(tx, context, 'notices');
    return listNotices(tx, context.actor, query);
  });
}

export function readUnread(context: Context) {
  return withTx(context, (tx) => countUnread(tx, context.actor), { isReadOnly: true });
}

/** Reads a notice, and acknowledges it if the reader says so. Doing it again changes nothing. */
export function readNotice(context: Context, noticeId: string, { isAcknowledged }: NoticeReadingWish) {
  const { actor } = context;
  const { storehouseId, personId, householdId } = actor;
  return withTx(context, async (tx) => {
    await loadNoticeToMe(tx, actor, noticeId);
    const readAt = context.now();
    const acknowledgedAt = isAcknowledged ? readAt : null;
    return upsertReading(tx, { storehouseId, noticeId, personId, householdId, readAt, acknowledgedAt });
  });
}

/** Tells everyone, the holders of a duty, one household, or those who pledged in a buy. */
export function tell(context: Context, wish: NoticeWish): Promise<NoticeRow> {
  const { storehouseId } = context.actor;
  const { audience, about, says, dueOn, isSafety } = wish;
  if (dueOn !== null && dueOn < todayOf(context))
    throw fieldProblem('invalid-input', 'dueOn', 'This day is over; nobody can meet it.');
  return withTx(
    context,
    async (tx) => {
      await refuseNobody(tx, context, audience);
      const path = audience.to === 'buy' ? { path: `/buys/${audience.buyId}` } : {};
      const draft = { kind: 'written', audience, about, says, dueOn, isSafety, ...path } as const;
      return loadNotice(tx, storehouseId, await writeNotice(tx, context, draft));
    },
    { task: 'notice' },
  );
}

async function refuseNobody(tx: Tx, { actor }: Context, audience: NoticeWish['audience']): Promise<void> {
  const { storehouseId } = actor;
  if (audience.to === 'household' && !(await findPresentHousehold(tx, storehouseId, audience.householdId)))
    throw fieldProblem('thing-not-found', 'audience.householdId', 'There is no such household here.');
  if (audience.to === 'buy' && (await findBuyName(tx, storehouseId, audience.buyId)) === undefined)
    throw fieldProblem('thing-not-found', 'audience.buyId', 'There is no such buy.');
}

/** What persons wrote and what was told about safety, with how far each has come. */
export function readWritten(context: Context, page: Pick<NoticeQuery, 'after' | 'limit'>) {
  const { storehouseId } = context.actor;
  const { after, limit } = page;
  return withTx(
    context,
    async (tx) => {
      const kinds = ['written', 'held', 'released'];
      const written = await listWritten(tx, storehouseId, { after, limit, kinds });
      const householdIds = written.slice(0, limit).flatMap(({ notice }) => notice.householdId ?? []);
      await notePrivateRead(tx, context, { householdIds, what: 'notices', purpose: 'who was told what' });
      return written;
    },
    { task: 'notice' },
  );
}

/** Which households have acknowledged a notice; whoever has not is telephoned (job map 12). */
export function readReach(context: Context, noticeId: string) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const notice = await loadNotice(tx, storehouseId, noticeId);
      const reached = await listReach(tx, notice);
      const householdIds = reached.map((row) => row.householdId);
      await notePrivateRead(tx, context, { householdIds, what: 'notices', purpose: 'who was reached' });
      return { notice, reached };
    },
    { task: 'notice' },
  );
}

/** Takes back what was written by mistake: nobody is shown it any more. */
export function withdrawNotice(context: Context, noticeId: string): Promise<void> {
  return withTx(
    context,
    async (tx) => {
      const notice = await loadNotice(tx, context.actor.storehouseId, noticeId);
      if (notice.kind !== 'written')
        throw fieldProblem(
          'in-use',
          'notice',
          'The book told this itself; it stands as long as what it is about.',
        );
      if (notice.withdrawnAt === null) await updateWithdrawn(tx, notice, context.now());
    },
    { task: 'notice' },
  );
}
