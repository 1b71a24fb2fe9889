import type { FundPromiseReading } from './queries.ts';
import type { FundStand } from './use-cases.ts';

export function presentFundPromise({ promise, item, entryNo, isFulfilled }: FundPromiseReading) {
  return {
    id: promise.fundPromiseId,
    minorUnits: promise.minorUnits,
    purpose: promise.purpose,
    itemId: promise.equipmentItemId,
    item,
    overrideReason: promise.overrideReason,
    approvedBy: promise.approvedBy,
    approvedAt: promise.approvedAt.toISOString(),
    state: stateOf(promise.withdrawnAt !== null, isFulfilled),
    entryId: isFulfilled ? promise.entryId : null,
    entryNo: isFulfilled ? entryNo : null,
    withdrawnAt: promise.withdrawnAt?.toISOString() ?? null,
    withdrawnBecause: promise.withdrawnBecause,
  };
}

function stateOf(isWithdrawn: boolean, isFulfilled: boolean): 'withdrawn' | 'fulfilled' | 'open' {
  if (isWithdrawn) return 'withdrawn';
  return isFulfilled ? 'fulfilled' : 'open';
}

export const presentFundPromises = (answer: {
  stand: FundStand;
  currency: string;
  rows: readonly FundPromiseReading[];
  next: string | null;
}) => ({
  currency: answer.currency,
  ...answer.stand,
  promises: answer.rows.map(presentFundPromise),
  next: answer.next,
});
