import { mostAtOnce } from '@sheafbook/booking';
import type { AuditFinding, AuditInput, AuditLoan } from './audit-rows.ts';
import { finding } from './finding.ts';

/** Invariants 11 and 12: what is lent, and its deposits. Units: as told. Errors: none. Source: job map 15. */
export function loanFindings(input: AuditInput): AuditFinding[] {
  return [bookingFinding(input), loanFinding(input), depositFinding(input)];
}

function bookingFinding({ bookings, loans }: AuditInput): AuditFinding {
  const overlapping = [...groupBy(bookings, ({ unitId }) => unitId).values()].reduce(
    (sum, own) => sum + countOverlaps(own),
    0,
  );
  const beyond = [...groupBy(loans, ({ itemId }) => itemId).values()].filter(isBeyondUnits);
  return finding({
    number: 11,
    key: 'bookings',
    invariant: 'No two times that hold one piece overlap, and of no thing more are out than there are',
    holds: overlapping === 0 && beyond.length === 0,
    counts: [
      [bookings.length, 'times held'],
      [overlapping, 'overlapping'],
      [loans.length, 'loans'],
      [beyond.length, 'things with more out than there are'],
    ],
  });
}

/** How often a time begins before one that began earlier has ended. */
function countOverlaps(own: readonly { readonly startMs: number; readonly endMs: number }[]): number {
  let heldUntilMs = Number.NEGATIVE_INFINITY;
  let overlapping = 0;
  for (const { startMs, endMs } of own.toSorted((a, b) => a.startMs - b.startMs)) {
    if (startMs < heldUntilMs) overlapping += 1;
    heldUntilMs = Math.max(heldUntilMs, endMs);
  }
  return overlapping;
}

/** What is still out is out for good, as far as the book can tell; what came back at once was never out. */
function isBeyondUnits(loans: readonly AuditLoan[]): boolean {
  const out = loans
    .map(({ outMs, inMs }) => ({ startMs: outMs, endMs: inMs ?? Number.MAX_SAFE_INTEGER }))
    .filter(({ startMs, endMs }) => startMs < endMs);
  return mostAtOnce(out) > Math.max(0, ...loans.map(({ itemUnits }) => itemUnits));
}

function loanFinding({ loans }: AuditInput): AuditFinding {
  const backwards = loans.filter(({ outMs, inMs }) => inMs !== null && inMs < outMs);
  const parts = loans.flatMap((loan) => loan.parts);
  const more = parts.filter(({ out, back }) => back !== null && back > out);
  const uncounted = loans.filter(
    (loan) => loan.inMs !== null && loan.parts.some(({ back }) => back === null),
  );
  const crippled = loans.filter(({ isCrippled }) => isCrippled);
  return finding({
    number: 12,
    key: 'loans',
    invariant:
      'Every loan came back after it went out, with no more parts than it had, and had every critical one',
    holds: backwards.length + more.length + uncounted.length + crippled.length === 0,
    counts: [
      [loans.length, 'loans'],
      [parts.length, 'parts'],
      [backwards.length, 'back before out'],
      [more.length, 'parts of which more came back'],
      [uncounted.length, 'back uncounted'],
      [crippled.length, 'without a critical part'],
    ],
  });
}

/** A deposit is held while its loan is out, and no longer. */
function depositFinding({ loans, accounts }: AuditInput): AuditFinding {
  const ended = new Set(loans.flatMap(({ loanId, inMs }) => (inMs === null ? [] : [loanId])));
  const held = accounts.filter(
    ({ kind, causeId, inflow, outflow }) =>
      kind === 'loan_deposit' && causeId !== null && ended.has(causeId) && inflow !== outflow,
  );
  return finding({
    number: 12,
    key: 'loan-deposits',
    invariant: 'The deposit of every loan that came back is settled',
    holds: held.length === 0,
    counts: [
      [ended.size, 'loans back'],
      [held.length, 'deposits not settled'],
    ],
  });
}

function groupBy<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) groups.set(keyOf(row), [...(groups.get(keyOf(row)) ?? []), row]);
  return groups;
}
