import type { PlannedFile } from './plan-sheets.ts';

export type Outcome = {
  readonly openingOn: string;
  readonly files: readonly PlannedFile[];
  readonly isPossible: boolean;
  /** A digest of the bytes, the choices and every effect. Null while something is in the way. */
  readonly seen: string | null;
  /** Households whose eaters or shelf the sheets are about. */
  readonly lookedAt: readonly string[];
};

export function countsOf({ rows }: PlannedFile) {
  const newRows = rows.filter(
    ({ effect }) => effect !== null && !/^(there|nothing)$/.test(effect.code),
  ).length;
  const skippedRows = rows.filter(
    ({ effect }) => effect !== null && /^(there|nothing)$/.test(effect.code),
  ).length;
  return { newRows, skippedRows };
}
