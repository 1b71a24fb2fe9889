import type { InferResponseType } from 'hono/client';
import type { api } from '../../api/client.ts';

export type Coverage = InferResponseType<(typeof api.storehouses)[':storehouse']['coverage']['$get'], 200>;
export type CoveredGroup = Coverage['groups'][number];

/** The foods that the household counts by, what runs out first first; then the others in the same way. */
export function inOrderOfEnd(groups: readonly CoveredGroup[]): readonly CoveredGroup[] {
  const daysOf = ({ wholeDays }: CoveredGroup) => wholeDays ?? Number.MAX_SAFE_INTEGER;
  return groups
    .filter(({ needGramsPerDay }) => needGramsPerDay > 0)
    .toSorted(
      (a, b) =>
        Number(b.isTargeted) - Number(a.isTargeted) ||
        daysOf(a) - daysOf(b) ||
        a.group.localeCompare(b.group),
    );
}
