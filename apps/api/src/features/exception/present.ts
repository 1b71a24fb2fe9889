import type { CorrectionRow, Exceptions, OverrideRow } from './queries.ts';

const presentCorrection = (row: CorrectionRow) => ({
  entryId: row.entryId,
  entryNo: row.entryNo,
  onDay: row.onDay,
  by: row.by,
  reason: row.reason,
  undoneEntryId: row.undoneEntryId,
  undoneEntryNo: row.undoneEntryNo,
  undoneWhat: row.undoneWhat,
  minorUnits: row.minorUnits,
});

const presentOverride = (row: OverrideRow) => ({
  kind: row.kind,
  onDay: row.onDay,
  by: row.by,
  reason: row.reason,
  buyId: row.buyId,
  buy: row.buy,
  householdId: row.householdId,
  household: row.household,
  minorUnits: row.minorUnits,
  stage: row.stage,
});

export const presentExceptions = ({ currency, corrections, overrides }: Exceptions) => ({
  currency,
  corrections: corrections.map(presentCorrection),
  overrides: overrides.map(presentOverride),
});

/** Both in one list, a row each. */
export const exceptionRows = ({ currency, corrections, overrides }: Exceptions) => [
  ...corrections.map(({ onDay, by, reason, minorUnits, entryNo, undoneEntryNo, undoneWhat }) => ({
    ...{
      kind: 'correction',
      onDay,
      by,
      reason,
      minorUnits,
      currency,
      entryNo,
      undoneEntryNo,
      of: undoneWhat,
    },
    ...{ buy: null, household: null },
  })),
  ...overrides.map(({ kind, onDay, by, reason, minorUnits, stage, buy, household }) => ({
    ...{ kind, onDay, by, reason, minorUnits, currency, entryNo: null, undoneEntryNo: null, of: stage },
    ...{ buy, household },
  })),
];
