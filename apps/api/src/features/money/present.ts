import type { PostedEntry } from '../../platform/post-entry.ts';
import type { listDepositsOfBuy } from './queries.ts';

export type Posted = PostedEntry & {
  readonly what: string;
  readonly onDay: string;
  readonly minorUnits: number;
  readonly currency: string;
};

export function presentPosted(posted: Posted) {
  const { entryId, entryNo, what, onDay, minorUnits, currency } = posted;
  return { entryId, entryNo, what, onDay, minorUnits, currency };
}

type DepositRow = Awaited<ReturnType<typeof listDepositsOfBuy>>[number];

const isSettled = ({ heldMinorUnits, askedMinorUnits, isWaived }: DepositRow): boolean =>
  askedMinorUnits === null ? heldMinorUnits > 0 : isWaived || heldMinorUnits >= askedMinorUnits;

/** The coordinator learns whether ordering still waits for a household, not what it paid nor why it need not. */
export function presentDeposits(answer: { rows: readonly DepositRow[]; showsAmounts: boolean }) {
  return {
    deposits: answer.rows.map((row) => ({
      householdId: row.householdId,
      household: row.name,
      isSettled: isSettled(row),
      ...(answer.showsAmounts
        ? {
            heldMinorUnits: row.heldMinorUnits,
            askedMinorUnits: row.askedMinorUnits,
            dueOn: row.dueOn,
            isWaived: row.isWaived,
          }
        : {}),
    })),
  };
}
