import {
  type AuditInput,
  accountKeyText,
  guardOf,
  isOutside,
  type MovementDraft,
  postingTotals,
  respectsGuard,
  type UnitKey,
  unitKeyText,
  type VesselKind,
} from '@sheafbook/ledger';

/** One entry of a book that a test tells: its drafts, and which earlier one (counted from 1) it undoes. */
export type ToldEntry = {
  readonly drafts: readonly MovementDraft[];
  readonly reverses?: number;
  readonly recordedAt?: string;
};

const NO_ROWS = {
  buys: [],
  sessions: [],
  costLines: [],
  splits: [],
  reruns: [],
  lots: [],
  containers: [],
  codes: [],
  pledges: [],
  fills: [],
  holds: [],
  bankMatches: [],
  digests: [],
  tinCounts: [],
  bookings: [],
  loans: [],
};

/** Posts entries into rows as a database would, without refusing any; `rows` are what else the audit should see. */
export function aBook(
  told: readonly ToldEntry[],
  vesselKinds: Readonly<Record<string, VesselKind>> = {},
  rows: Partial<AuditInput> = {},
): AuditInput {
  const drafts = told.flatMap((entry) => entry.drafts);
  const units = new Map(drafts.map(({ unit }) => [unitKeyText(unit), unit]));
  return {
    ...NO_ROWS,
    units: [...units].map(([unitId, unit]) => ({ unitId, kind: unit.kind })),
    accounts: accountsOf(drafts, vesselKinds),
    entries: told.map(({ reverses, recordedAt }, position) => ({
      entryId: `entry-${position + 1}`,
      entryNo: position + 1,
      recordedAt: recordedAt ?? '2026-09-05T08:00:00Z',
      reversesEntryId: reverses === undefined ? null : `entry-${reverses}`,
    })),
    movements: told.flatMap((entry, position) =>
      entry.drafts.map(({ unit, source, destination, amount }, line) => ({
        entryId: `entry-${position + 1}`,
        line: line + 1,
        unitId: unitKeyText(unit),
        sourceId: accountKeyText(unit, source),
        destinationId: accountKeyText(unit, destination),
        amount,
      })),
    ),
    ...rows,
  };
}

/** Keeps the entries that a guarded book takes, each judged as a whole after those before it. */
export function takenByGuards(
  told: readonly ToldEntry[],
  vesselKinds: Readonly<Record<string, VesselKind>>,
): ToldEntry[] {
  let taken: ToldEntry[] = [];
  for (const entry of told) {
    const next = [...taken, entry];
    const accounts = accountsOf(
      next.flatMap(({ drafts }) => drafts),
      vesselKinds,
    );
    if (accounts.every((account) => respectsGuard(account.guard, account))) taken = next;
  }
  return taken;
}

/** Turns a unit's key into the id it has in the rows of `aBook`. */
export const unitIdOf = (unit: UnitKey): string => unitKeyText(unit);

function accountsOf(drafts: readonly MovementDraft[], vesselKinds: Readonly<Record<string, VesselKind>>) {
  return postingTotals(drafts).map(({ accountKey, unit, key, ins, outs }) => {
    const vesselKind = vesselKinds[key.vesselId ?? ''] ?? 'bag';
    const outsideKind = isOutside(vesselKind) ? vesselKind : null;
    return {
      ...key,
      accountId: accountKey,
      unitId: unitKeyText(unit),
      outsideKind,
      guard: guardOf(key, outsideKind),
      inflow: ins,
      outflow: outs,
    };
  });
}
