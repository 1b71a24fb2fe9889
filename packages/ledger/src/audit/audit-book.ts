import type { AuditFinding, AuditInput } from './audit-rows.ts';
import { bookFindings } from './book-checks.ts';
import { buyFindings } from './buy-checks.ts';
import { loanFindings } from './loan-checks.ts';
import { massFindings } from './mass-checks.ts';
import { sessionFindings } from './session-checks.ts';
import { tillFindings } from './till-checks.ts';

/**
 * Tests every invariant of the book that the rows can show, and gives each with its figure, by number. Rows must come
 * from one snapshot. A check without rows holds and its figure says so: nothing looked at, nothing wrong.
 * Units: as the figures say. Errors: none. Source: job map 15, numbers 1–16.
 */
export function auditBook(input: AuditInput): AuditFinding[] {
  return [
    ...bookFindings(input),
    ...buyFindings(input),
    ...sessionFindings(input),
    ...massFindings(input),
    ...loanFindings(input),
    ...tillFindings(input),
  ].sort((a, b) => a.number - b.number);
}
