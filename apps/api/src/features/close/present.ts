import type { Closing } from './use-cases.ts';

export function presentClosing({ buy, facts, shown }: Closing) {
  return {
    buyId: buy.buyId,
    stage: buy.stage,
    version: buy.version,
    isReady: shown.length === 0,
    clearingMinorUnits: facts.clearingMinorUnits,
    unassignedGrams: facts.unassignedGrams,
    missing: shown,
  };
}
