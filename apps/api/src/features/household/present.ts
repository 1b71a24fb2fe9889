import type { HouseholdRow } from '@sheafbook/db/tables';

/** Name and seat are for everyone in the storehouse to see; nothing else of a household is. */
export function presentHousehold(household: HouseholdRow) {
  return {
    id: household.householdId,
    seat: household.seat,
    name: household.name,
    joinedOn: household.joinedOn,
    leftOn: household.leftOn,
    version: household.version,
  };
}
