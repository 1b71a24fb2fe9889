import type { HouseholdContactRow } from '@sheafbook/db/tables';

export function presentContact(householdId: string, contact: HouseholdContactRow | undefined) {
  return {
    householdId,
    phone: contact?.phone ?? '',
    address: contact?.address ?? '',
    email: contact?.email ?? '',
    shownToMembers: contact?.shownToMembers ?? false,
    version: contact?.version ?? 0,
  };
}
