import type { Tx } from '@sheafbook/db';
import type { NoticeRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { listUnreached } from './queries-unreached.ts';

/** Job map section 12, "Acknowledgement is per household; unreached after 24 h → coordinator telephones". */
const TELEPHONE_AFTER_MS = 24 * 3_600_000;

/** One thing that was told about safety, and the households to telephone about it. */
export type Unreached = {
  readonly notice: NoticeRow;
  readonly telephoneAt: Date;
  readonly households: readonly { readonly householdId: string; readonly name: string }[];
};

/**
 * Whom nobody has reached a day after something about safety was told, one entry for each thing: a hold is told to each
 * owner by itself, and is one thing. In a transaction of the task `notice`.
 */
export async function listToTelephone(tx: Tx, { actor, now }: Context): Promise<Unreached[]> {
  const writtenBefore = new Date(now().getTime() - TELEPHONE_AFTER_MS);
  const rows = await listUnreached(tx, actor, writtenBefore);
  const things = [...new Set(rows.map(({ notice }) => thingOf(notice)))];
  return things.flatMap((thing) => {
    const found = rows.filter(({ notice }) => thingOf(notice) === thing);
    const [first] = found;
    if (!first) return [];
    const households = found.map(({ householdId, name }) => ({ householdId, name }));
    const telephoneAt = new Date(first.notice.writtenAt.getTime() + TELEPHONE_AFTER_MS);
    return [{ notice: first.notice, telephoneAt, households }];
  });
}

const thingOf = ({ kind, path, noticeId }: NoticeRow): string => (kind === 'held' ? path : noticeId);
