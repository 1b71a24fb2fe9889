import type { NamedGrant } from './queries.ts';

export function presentHelperGrant({ grant, helperName, householdName }: NamedGrant, now: Date) {
  return {
    id: grant.helperGrantId,
    householdId: grant.householdId,
    householdName,
    helperId: grant.personId,
    helperName,
    reason: grant.reason,
    isInForce: grant.endedAt === null && grant.expiresAt > now,
    grantedBy: grant.grantedBy,
    grantedAt: grant.grantedAt.toISOString(),
    expiresAt: grant.expiresAt.toISOString(),
    endedAt: grant.endedAt?.toISOString() ?? null,
  };
}
