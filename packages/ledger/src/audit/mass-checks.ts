import { compareInstants } from '../calendar.ts';
import type { AuditAccount, AuditFinding, AuditHold, AuditInput, AuditMovement } from './audit-rows.ts';
import { walkBook } from './book-walk.ts';
import { finding } from './finding.ts';

/** The checks of mass, origin, containers and holds: invariants 8, 9, 10 and 16. Units: as told. Errors: none. */
export function massFindings(input: AuditInput): AuditFinding[] {
  return [holdersFinding(input), originFinding(input), containersFinding(input), holdsFinding(input)];
}

function holdersFinding(input: AuditInput): AuditFinding {
  const lotIds = new Set(input.units.filter((unit) => unit.kind === 'lot').map((unit) => unit.unitId));
  const mass = input.accounts.filter((account) => account.kind === 'mass' && lotIds.has(account.unitId));
  const final = new Map<string, number>();
  const negative = new Set<string>();
  walkBook(input, ({ touched, balances }) => {
    for (const account of touched) {
      const balance = balances.get(account.accountId) ?? 0;
      final.set(account.accountId, balance);
      if (account.kind === 'mass' && account.outsideKind === null && balance < 0)
        negative.add(account.accountId);
    }
  });
  const gramsIn = (accounts: readonly AuditAccount[]) =>
    accounts.reduce((sum, { accountId }) => sum + (final.get(accountId) ?? 0), 0);
  const inGrams = -gramsIn(mass.filter((account) => account.outsideKind === 'supplier')) || 0; // no −0 in print
  const unbalancedLots = [...lotIds].filter(
    (lotId) => gramsIn(mass.filter((account) => account.unitId === lotId)) !== 0,
  );
  return finding({
    number: 8,
    key: 'lots',
    invariant: 'Every gram of every lot has a holder, and no holder ever held less than nothing',
    holds: unbalancedLots.length === 0 && negative.size === 0,
    counts: [
      [lotIds.size, 'lots'],
      [inGrams, 'grams from suppliers'],
      [unbalancedLots.length, 'lots out of balance'],
      [negative.size, 'holders below zero'],
    ],
  });
}

function originFinding(input: AuditInput): AuditFinding {
  const origins = new Map(input.lots.map((lot) => [lot.lotId, lot]));
  // Grown from the lots with an origin of their own, so a circle of parents never reaches one.
  const traced = new Set(
    input.lots.filter((lot) => lot.deliveryId !== null || lot.intakeId !== null).map((lot) => lot.lotId),
  );
  const settled = new Set<string>();
  for (let before = -1; before !== settled.size; ) {
    before = settled.size;
    for (const { lotId, parentLotIds } of input.lots) {
      if (!parentLotIds.every((parentId) => settled.has(parentId))) continue;
      settled.add(lotId);
      if (parentLotIds.some((parentId) => traced.has(parentId))) traced.add(lotId);
    }
  }
  const circularCount = origins.size - settled.size;
  const orphanCount = input.containers.filter((container) => !traced.has(container.lotId)).length;
  return finding({
    number: 9,
    key: 'lineage',
    invariant: 'Lineage runs in no circle, and every container reaches a delivery or an intake',
    holds: circularCount === 0 && orphanCount === 0,
    counts: [
      [input.lots.length, 'lots'],
      [input.containers.length, 'containers'],
      [circularCount, 'lots in a circle or with an unknown parent'],
      [orphanCount, 'containers without an origin'],
    ],
  });
}

function containersFinding(input: AuditInput): AuditFinding {
  const repeatedCount = input.codes.length - new Set(input.codes).size;
  const over = input.containers.filter(
    // 8 % above level is what shaking down gives; common practice, no source.
    ({ netGrams, capacityGrams }) => netGrams * 100 > capacityGrams * 108,
  );
  return finding({
    number: 10,
    key: 'codes',
    invariant: 'No code is used twice, and no container holds more than its capacity and 8 %',
    holds: repeatedCount === 0 && over.length === 0,
    counts: [
      [input.codes.length, 'codes'],
      [input.containers.length, 'containers'],
      [repeatedCount, 'codes repeated'],
      [over.length, 'containers over capacity'],
    ],
  });
}

function holdsFinding(input: AuditInput): AuditFinding {
  const accounts = new Map(input.accounts.map((account) => [account.accountId, account]));
  const entries = new Map(input.entries.map((entry) => [entry.entryId, entry]));
  const byLot = new Map<string, AuditHold[]>();
  for (const hold of input.holds) {
    byLot.set(hold.lotUnitId, [...(byLot.get(hold.lotUnitId) ?? []), hold]);
  }
  const moved = input.movements.filter((movement) => {
    const entry = entries.get(movement.entryId);
    // Undoing an entry puts the record right; it takes food nowhere new.
    if (!entry || entry.reversesEntryId !== null) return false;
    const holds = byLot.get(movement.unitId) ?? [];
    return holds.some((hold) => isDuring(hold, entry.recordedAt) && breaksHold(hold, movement, accounts));
  });
  const carelessly = input.holds.filter(
    ({ releasedAt, releasedByLoginIds }) =>
      releasedAt !== null && releasedByLoginIds !== null && new Set(releasedByLoginIds).size < 2,
  );
  return finding({
    number: 16,
    key: 'holds',
    invariant: 'Nothing on hold moved, and every release was signed by two logins',
    holds: moved.length === 0 && carelessly.length === 0,
    counts: [
      [countHolds(input.holds), 'holds'],
      [moved.length, 'movements during a hold'],
      [countHolds(carelessly), 'releases without two logins'],
    ],
  });
}

/** A hold of several lots stands in several rows. */
const countHolds = (holds: readonly AuditHold[]): number => new Set(holds.map(({ holdId }) => holdId)).size;

function isDuring({ heldAt, releasedAt }: AuditHold, recordedAt: string): boolean {
  const isBeforeRelease = releasedAt === null || compareInstants(recordedAt, releasedAt) < 0;
  return compareInstants(recordedAt, heldAt) > 0 && isBeforeRelease;
}

/** What may still happen to food on hold: it goes back, is thrown away, tested, spilled or weighed again. */
const ALLOWED_ON_HOLD: ReadonlySet<string | null> = new Set([
  'supplier',
  'discarded',
  'sampled',
  'spilled',
  'unexplained',
  'moisture',
]);

function breaksHold(
  hold: AuditHold,
  movement: AuditMovement,
  accounts: ReadonlyMap<string, AuditAccount>,
): boolean {
  const sides = [accounts.get(movement.sourceId), accounts.get(movement.destinationId)];
  const { vesselIds } = hold;
  const isHeld = vesselIds === null || sides.some((side) => vesselIds.includes(side?.vesselId ?? ''));
  return isHeld && !sides.some((side) => ALLOWED_ON_HOLD.has(side?.outsideKind ?? null));
}
