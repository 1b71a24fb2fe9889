import type { CashCountRow } from '@sheafbook/db/tables';
import type { CountsReading, readTin } from './use-cases.ts';

export function presentTin({
  currency,
  expectedMinorUnits,
  pieces,
  last,
}: Awaited<ReturnType<typeof readTin>>) {
  return { currency, expectedMinorUnits, pieces, lastCountedOn: last?.count.onDay ?? null };
}

export function presentCount(count: CashCountRow) {
  return {
    id: count.cashCountId,
    onDay: count.onDay,
    expectedMinorUnits: count.expectedMinorUnits,
    countedMinorUnits: count.countedMinorUnits,
    differenceMinorUnits: count.countedMinorUnits - count.expectedMinorUnits,
    pieces: count.pieces,
    reason: count.reason,
    entryId: count.entryId,
    countedAt: count.countedAt.toISOString(),
  };
}

export const presentCounts = ({ currency, rows, next }: CountsReading) => ({
  ...{ currency, next },
  counts: rows.map(({ count, by, alongside, entryNo }) => ({
    ...presentCount(count),
    ...{ countedBy: by, countedWith: alongside, entryNo },
  })),
});

/** One row a count, for a spreadsheet. */
export const countRows = ({ rows }: CountsReading) =>
  rows.map(({ count, by, alongside, entryNo }) => {
    const { onDay, expectedMinorUnits, countedMinorUnits, differenceMinorUnits, reason } =
      presentCount(count);
    return {
      ...{ onDay, expectedMinorUnits, countedMinorUnits, differenceMinorUnits, reason, entryNo },
      ...{ countedBy: by, countedWith: alongside },
    };
  });
