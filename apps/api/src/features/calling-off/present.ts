import type { CalledOff } from './use-cases.ts';

/** How many were refunded, never how much each: that is between a household, the treasurer and the reviewer. */
export function presentCalledOff(result: CalledOff) {
  return {
    id: result.buy.buyId,
    stage: result.buy.stage,
    version: result.buy.version,
    householdsRefunded: result.householdsRefunded,
    ordersCancelled: result.ordersCancelled,
    cancellationMinorUnits: result.cancellationMinorUnits,
  };
}
