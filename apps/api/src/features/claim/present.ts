import type { ClaimRow } from '@sheafbook/db/tables';
import type { ClaimInWords } from './history.ts';
import type { readClaimHistory } from './use-cases.ts';

export function presentClaim(claim: ClaimRow) {
  return {
    id: claim.claimId,
    buyId: claim.buyId,
    supplierId: claim.supplierId,
    buyLineId: claim.buyLineId,
    kind: claim.kind,
    minorUnits: claim.minorUnits,
    because: claim.because,
    state: claim.state,
    raisedOn: claim.raisedOn,
    settledOn: claim.settledOn,
    creditedMinorUnits: claim.creditedMinorUnits,
    version: claim.version,
  };
}

export function presentClaimInWords(claim: ClaimInWords) {
  return {
    id: claim.claimId,
    buyId: claim.buyId,
    buy: claim.buy,
    supplierId: claim.supplierId,
    supplier: claim.supplier,
    food: claim.foodEn,
    foodEs: claim.foodEs,
    kind: claim.kind,
    because: claim.because,
    outcome: claim.outcome,
    raisedOn: claim.raisedOn,
    settledOn: claim.settledOn,
    minorUnits: claim.minorUnits,
    creditedMinorUnits: claim.creditedMinorUnits,
    accountId: claim.accountId,
  };
}

export const presentClaimHistory = ({
  claim,
  steps,
  currency,
}: Awaited<ReturnType<typeof readClaimHistory>>) => ({
  currency,
  claim: presentClaimInWords(claim),
  steps: steps.map(({ what, onDay, by, note, entryId, entryNo }) => ({
    ...{ what, onDay, by, note, entryId, entryNo },
  })),
});
