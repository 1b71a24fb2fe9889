import type { LandedOwner } from '@sheafbook/sharing';
import type { SharingOwners } from '../split/queries.ts';
import type { LineAward } from './bills.ts';

/**
 * Everyone who may be charged: whoever was awarded something, and a household that withdrew after the order, which
 * still bears its part per household. Common stock, and who stepped into another's place, bear none of that.
 */
export function listBearers(facts: {
  readonly awards: readonly LineAward[];
  readonly withdrawnIds: readonly string[];
  readonly standInIds: readonly string[];
  readonly owners: SharingOwners;
}): LandedOwner[] {
  const { awards, withdrawnIds, standInIds, owners } = facts;
  const awarded = awards.filter((award) => award.grams > 0).map((award) => award.ownerId);
  return [...new Set([...awarded, ...withdrawnIds])].map((ownerId) => {
    const isHousehold = ownerId !== owners.commonId;
    return {
      ownerId,
      seat: owners.seats.get(ownerId)?.seat ?? 0,
      isHousehold,
      bearsHouseholdPart: isHousehold && !standInIds.includes(ownerId),
    };
  });
}
