import type { AuditFinding } from './audit-rows.ts';

/** One count that an audit prints: how many things were looked at, or found wrong. Units: as told. Errors: none. */
export type Counted = readonly [count: number, things: string];

/**
 * Makes a finding whose figure lists counts, such as "buys ended: 3, accounts not at zero: 0".
 * Units: as the words say. Errors: none.
 */
export function finding(result: {
  readonly number: number;
  readonly key: string;
  readonly invariant: string;
  readonly holds: boolean;
  readonly counts: readonly Counted[];
}): AuditFinding {
  const { number, key, invariant, holds, counts } = result;
  return {
    invariant,
    number,
    key,
    holds,
    figure: counts.map(([count, things]) => `${things}: ${count}`).join(', '),
  };
}
