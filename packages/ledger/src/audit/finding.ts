import type { AuditFinding } from './audit-rows.ts';

/** Words for one count that an audit prints: how many things were looked at, or found wrong. */
export type Counted = readonly [count: number, things: string];

/**
 * Makes a finding whose figure lists counts, such as "3 closed buys, 0 accounts not at zero".
 * Units: as the words say. Errors: none.
 */
export function finding(result: {
  readonly number: number;
  readonly invariant: string;
  readonly holds: boolean;
  readonly counts: readonly Counted[];
}): AuditFinding {
  const { number, invariant, holds, counts } = result;
  return {
    invariant,
    number,
    holds,
    figure: counts.map(([count, things]) => `${count} ${things}`).join(', '),
  };
}
