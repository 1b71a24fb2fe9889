import type { SeenKeying } from './queries.ts';

export const presentKeyings = (keyings: readonly SeenKeying[]) => ({
  keyings: keyings.map((keying) => ({
    id: keying.keyingId,
    what: keying.what,
    subjectId: keying.subjectId,
    householdId: keying.householdId,
    paperCode: keying.paperCode,
    writtenAt: keying.writtenAt.toISOString(),
    keyedAt: keying.keyedAt.toISOString(),
    keyedBy: keying.keyedByName,
    isEnteredFor: keying.isEnteredFor,
  })),
});
