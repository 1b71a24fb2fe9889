import type { PrivateReadRow } from '@sheafbook/db/tables';
import type { LooksRow, MonthOfLooks } from './queries.ts';

/** Who looked, at what, when and why. */
export function presentPrivateRead({ read, readerName }: { read: PrivateReadRow; readerName: string }) {
  return {
    id: read.privateReadId,
    readerId: read.personId,
    readerName,
    what: read.what,
    purpose: read.purpose,
    readAt: read.readAt.toISOString(),
  };
}

export function presentLooks(row: LooksRow) {
  return {
    duties: row.duties,
    what: row.what,
    purpose: row.purpose,
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
  looks: row.looks,
  households: row.households,
});

/** What is written down, once more as it is said in the reader's language; a spreadsheet has it as it was written. */
export const asSaid = <Look extends { readonly purpose: string }>(
  look: Look & { readonly what?: string },
) => ({
  ...look,
  lookedAt: look.what ?? '',
  lookedFor: look.purpose,
});
