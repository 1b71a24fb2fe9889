import { balanceOf } from '../balance.ts';
import { guardOf, respectsGuard } from '../guard.ts';
import type { AuditAccount, AuditFinding, AuditInput, AuditMovement } from './audit-rows.ts';
import { groupByEntry, walkBook } from './book-walk.ts';
import { finding } from './finding.ts';

/**
 * Lists the accounts whose running totals are not what their movements add up to.
 * Units: none; account ids in the order of the rows. Errors: none.
 */
export function accountsDrifted(input: Pick<AuditInput, 'accounts' | 'movements'>): string[] {
  const ins = new Map<string, number>();
  const outs = new Map<string, number>();
  for (const { sourceId, destinationId, amount } of input.movements) {
    ins.set(destinationId, (ins.get(destinationId) ?? 0) + amount);
    outs.set(sourceId, (outs.get(sourceId) ?? 0) + amount);
  }
  return input.accounts
    .filter(
      ({ accountId, inflow, outflow }) =>
        inflow !== (ins.get(accountId) ?? 0) || outflow !== (outs.get(accountId) ?? 0),
    )
    .map((account) => account.accountId);
}

/**
 * Lists the units whose accounts' balances do not add up to zero.
 * Units: none; unit ids in the order of the rows. Errors: none.
 */
export function unitsOutOfBalance(input: Pick<AuditInput, 'accounts' | 'units'>): string[] {
  const sums = new Map<string, bigint>(); // each balance is exact in a number, a sum of many need not be
  for (const account of input.accounts) {
    sums.set(account.unitId, (sums.get(account.unitId) ?? 0n) + BigInt(balanceOf(account)));
  }
  return input.units.filter(({ unitId }) => (sums.get(unitId) ?? 0n) !== 0n).map(({ unitId }) => unitId);
}

/** The checks of the book's own shape: invariants 1 and 2, totals and guards. Units: as told. Errors: none. */
export function bookFindings(input: AuditInput): AuditFinding[] {
  return [
    sidesFinding(input),
    prefixFinding(input),
    driftFinding(input),
    unitsFinding(input),
    guardsFinding(input),
  ];
}

function sidesFinding(input: AuditInput): AuditFinding {
  const accounts = new Map(input.accounts.map((account) => [account.accountId, account]));
  const entryIds = new Set(input.entries.map((entry) => entry.entryId));
  const byEntry = groupByEntry(input.movements);
  const emptyCount = input.entries.filter(({ entryId }) => !byEntry.has(entryId)).length;
  const wrongCount = input.movements.filter(
    (movement) => !entryIds.has(movement.entryId) || !hasBothSides(movement, accounts),
  ).length;
  return finding({
    number: 1,
    key: 'entry-sides',
    invariant:
      'Every entry has movements, and each movement has one positive amount and two sides in one unit',
    holds: emptyCount === 0 && wrongCount === 0,
    counts: [
      [input.entries.length, 'entries'],
      [input.movements.length, 'movements'],
      [emptyCount, 'empty entries'],
      [wrongCount, 'movements wrong'],
    ],
  });
}

function hasBothSides(movement: AuditMovement, accounts: ReadonlyMap<string, AuditAccount>): boolean {
  const isAmount = Number.isSafeInteger(movement.amount) && movement.amount > 0;
  const goesSomewhere = movement.sourceId !== movement.destinationId;
  const isOneUnit = [movement.sourceId, movement.destinationId].every(
    (accountId) => accounts.get(accountId)?.unitId === movement.unitId,
  );
  return isAmount && goesSomewhere && isOneUnit;
}

function prefixFinding(input: AuditInput): AuditFinding {
  let prefixCount = 0;
  walkBook(input, ({ touched, unitSums }) => {
    if (touched.some(({ unitId }) => unitSums.get(unitId) !== 0)) prefixCount += 1;
  });
  return finding({
    number: 2,
    key: 'zero-after-each',
    invariant: 'All accounts of a unit add up to zero after every entry',
    holds: prefixCount === 0,
    counts: [
      [input.entries.length, 'entries'],
      [prefixCount, 'entries that leave a unit out of balance'],
    ],
  });
}

function driftFinding(input: AuditInput): AuditFinding {
  const driftedCount = accountsDrifted(input).length;
  return finding({
    number: 2,
    key: 'running-totals',
    invariant: 'Running totals are what the movements add up to',
    holds: driftedCount === 0,
    counts: [
      [input.accounts.length, 'accounts'],
      [driftedCount, 'drifted'],
    ],
  });
}

function unitsFinding(input: AuditInput): AuditFinding {
  const unbalancedCount = unitsOutOfBalance(input).length;
  return finding({
    number: 2,
    key: 'units-balance',
    invariant: 'The running totals of each unit balance',
    holds: unbalancedCount === 0,
    counts: [
      [input.units.length, 'units'],
      [unbalancedCount, 'out of balance'],
    ],
  });
}

function guardsFinding(input: AuditInput): AuditFinding {
  const unguarded = input.accounts.filter(
    (account) => account.guard !== guardOf(account, account.outsideKind),
  );
  const beyond = input.accounts.filter((account) => !respectsGuard(account.guard, account));
  return finding({
    number: 8,
    key: 'guards',
    invariant: 'Every account has the guard of its kind and keeps to it',
    holds: unguarded.length === 0 && beyond.length === 0,
    counts: [
      [input.accounts.length, 'accounts'],
      [unguarded.length, 'with another guard'],
      [beyond.length, 'beyond their guard'],
    ],
  });
}
