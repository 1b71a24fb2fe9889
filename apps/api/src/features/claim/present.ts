import type { ClaimRow } from '@sheafbook/db/tables';

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
