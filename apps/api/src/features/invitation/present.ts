import type { HouseholdRow, InvitationRow } from '@sheafbook/db/tables';

export type InvitationState = 'open' | 'used' | 'withdrawn' | 'run-out';

export function stateOf(invitation: InvitationRow, now: Date): InvitationState {
  if (invitation.usedAt) return 'used';
  if (invitation.withdrawnAt) return 'withdrawn';
  return invitation.expiresAt <= now ? 'run-out' : 'open';
}

/** The only time that the token is seen: the book keeps its hash alone. */
export function presentNewInvitation(
  { invitation, token, email }: { invitation: InvitationRow; token: string; email: string | null },
  publicUrl: string,
) {
  const path = `/invitations/${invitation.storehouseId}/${token}`;
  return {
    id: invitation.invitationId,
    token,
    link: new URL(path, publicUrl).href,
    expiresAt: invitation.expiresAt.toISOString(),
    email,
  };
}

export function presentInvitation(
  row: { invitation: InvitationRow; household: HouseholdRow | null; maker: string },
  now: Date,
) {
  const { invitation, household, maker } = row;
  return {
    id: invitation.invitationId,
    state: stateOf(invitation, now),
    householdId: invitation.householdId,
    householdName: household?.name ?? invitation.householdName,
    madeBy: maker,
    madeAt: invitation.madeAt.toISOString(),
    expiresAt: invitation.expiresAt.toISOString(),
    usedAt: invitation.usedAt?.toISOString() ?? null,
    withdrawnAt: invitation.withdrawnAt?.toISOString() ?? null,
  };
}

/** What a stranger with the link sees. `isNewHousehold` asks for a name; `householdName` may suggest one. */
export function presentLook(row: {
  invitation: InvitationRow;
  storehouseName: string;
  household: HouseholdRow | null;
}) {
  return {
    storehouseName: row.storehouseName,
    isNewHousehold: row.invitation.householdId === null,
    householdName: row.household?.name ?? row.invitation.householdName,
    expiresAt: row.invitation.expiresAt.toISOString(),
  };
}
