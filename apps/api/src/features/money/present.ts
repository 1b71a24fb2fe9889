import { chartLine } from '@sheafbook/ledger';
import type { PostedEntry } from '../../platform/post-entry.ts';
import type { listDepositsOfBuy, listYearAccounts } from './queries.ts';

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

type YearEnd = {
  readonly currency: string;
  readonly throughOn: string;
  readonly accounts: Awaited<ReturnType<typeof listYearAccounts>>;
};

/** In the book's own signs: income stands below zero, what was spent above; the fund gets the opposite of the sum. */
export function presentYearEnd({ accounts, throughOn, currency }: YearEnd) {
  return {
    currency,
    throughOn,
    accounts: accounts.map(({ kind, balance }) => ({
      number: chartLine(kind).number,
      name: chartLine(kind).name,
      balanceMinorUnits: balance,
    })),
    toFundMinorUnits: accounts.reduce((sum, { balance }) => sum - balance, 0),
  };
}

type DepositRow = Awaited<ReturnType<typeof listDepositsOfBuy>>[number];

/** Whether ordering still waits for a household’s deposit. */
export const isSettled = ({ heldMinorUnits, askedMinorUnits, isWaived }: DepositRow): boolean =>
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
