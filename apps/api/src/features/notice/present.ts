import type { NoticeRow } from '@sheafbook/db/tables';
import type { NoticeToMe, Reached, WrittenNotice } from './queries.ts';

/** `words` is what the book says itself, in the reader's language; `text` what a person wrote, as it was written. */
function presentFacts(notice: NoticeRow) {
  const isWritten = notice.kind === 'written';
  return {
    id: notice.noticeId,
    kind: notice.kind,
    audience: notice.audience,
    duty: notice.duty,
    about: notice.about,
    aboutEs: notice.aboutEs || notice.about,
    words: isWritten ? '' : notice.says,
    text: isWritten ? notice.says : '',
    dueOn: notice.dueOn,
    path: notice.path === '' ? null : notice.path,
    isSafety: notice.isSafety,
    writtenAt: notice.writtenAt.toISOString(),
  };
}

export function presentNotice({ notice, readAt, acknowledgedAt, writerName, buyName }: NoticeToMe) {
  return {
    ...presentFacts(notice),
    // The book tells of a hold by itself; who put it on is told where the hold is.
    writtenBy: notice.kind === 'written' ? writerName : null,
    buyName,
    readAt: readAt?.toISOString() ?? null,
    acknowledgedAt: acknowledgedAt?.toISOString() ?? null,
  };
}

export function presentReading(reading: { readAt: Date; acknowledgedAt: Date | null }) {
  return {
    readAt: reading.readAt.toISOString(),
    acknowledgedAt: reading.acknowledgedAt?.toISOString() ?? null,
  };
}

export const presentTold = (notice: NoticeRow) => ({
  ...presentFacts(notice),
  householdId: notice.householdId,
});

export function presentWritten({ notice, householdName, buyName, read, acknowledged }: WrittenNotice) {
  return { ...presentFacts(notice), householdName, buyName, read, acknowledged };
}

export function presentReach({ notice, reached }: { notice: NoticeRow; reached: readonly Reached[] }) {
  return {
    ...presentFacts(notice),
    households: reached.map(({ householdId, name, acknowledgedAt }) => ({
      householdId,
      name,
      acknowledgedAt: acknowledgedAt === null ? null : new Date(acknowledgedAt).toISOString(),
    })),
  };
}
