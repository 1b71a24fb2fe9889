import { presentLacks } from './missing.ts';
import type { Closing } from './use-cases.ts';

export function presentClosing({ actor, buy, facts, missing }: Closing) {
  return {
    buyId: buy.buyId,
    stage: buy.stage,
    version: buy.version,
    isReady: missing.length === 0,
    clearingMinorUnits: facts.clearingMinorUnits,
    unassignedGrams: facts.unassignedGrams,
    missing: presentLacks(missing, actor),
  };
}
