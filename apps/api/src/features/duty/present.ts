import type { DutyGrantRow } from '@sheafbook/db/tables';

export function presentDutyGrant(grant: DutyGrantRow, personName: string) {
  return {
    id: grant.dutyGrantId,
    personId: grant.personId,
    personName,
    duty: grant.duty,
    grantedBy: grant.grantedBy, // null: the founder's own
    grantedAt: grant.grantedAt.toISOString(),
    endedAt: grant.endedAt?.toISOString() ?? null,
    endsOn: grant.endsOn,
  };
}
