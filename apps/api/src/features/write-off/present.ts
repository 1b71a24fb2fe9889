import type { WriteOffRow } from '@sheafbook/db/tables';

export function presentWriteOff(writeOff: WriteOffRow) {
  return {
    id: writeOff.writeOffId,
    householdId: writeOff.householdId,
    minorUnits: writeOff.minorUnits,
    reason: writeOff.reason,
    state: stateOf(writeOff),
    needsTwo: writeOff.needsTwo,
    askedBy: writeOff.askedBy,
    askedAt: writeOff.askedAt.toISOString(),
    agreedBy: writeOff.agreedBy,
    agreedAt: writeOff.agreedAt?.toISOString() ?? null,
    entryId: writeOff.entryId,
  };
}

function stateOf({ entryId, withdrawnAt }: WriteOffRow): 'posted' | 'withdrawn' | 'asked' {
  if (entryId !== null) return 'posted';
  return withdrawnAt === null ? 'asked' : 'withdrawn';
}

export const presentWriteOffs = (page: {
  rows: readonly { writeOff: WriteOffRow; householdName: string; isTakenBack: boolean }[];
  next: string | null;
}) => ({
  writeOffs: page.rows.map(({ writeOff, householdName, isTakenBack }) => ({
    ...presentWriteOff(writeOff),
    household: householdName,
    isTakenBack,
  })),
  next: page.next,
});
