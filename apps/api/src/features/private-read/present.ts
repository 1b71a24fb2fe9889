import type { PrivateReadRow } from '@sheafbook/db/tables';
import type { LooksRow, MonthOfLooks } from './queries.ts';

/** As it is written down, and once more as it is said in the reader's language. */
const saidOf = ({ what, purpose }: { what: string; purpose: string }) => ({
  what,
  purpose,
  lookedAt: what,
  lookedFor: purpose,
});

/** Who looked, at what, when and why. */
export function presentPrivateRead({ read, readerName }: { read: PrivateReadRow; readerName: string }) {
  return {
    id: read.privateReadId,
    readerId: read.personId,
    readerName,
    ...saidOf(read),
    readAt: read.readAt.toISOString(),
  };
}

export function presentLooks(row: LooksRow) {
  return {
    duties: row.duties,
    ...saidOf(row),
    looks: row.looks,
    readers: row.readers,
    households: row.households,
    firstOn: row.first_on,
    lastOn: row.last_on,
  };
}

export const presentMonthOfLooks = (row: MonthOfLooks) => ({
  month: row.month,
  reader: row.reader,
  purpose: row.purpose,
  lookedFor: row.purpose,
  looks: row.looks,
  households: row.households,
});
