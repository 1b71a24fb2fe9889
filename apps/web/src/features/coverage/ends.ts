import type { CoveredGroup } from '../home/coverage.ts';

type End = CoveredGroup['endsByEater'][number];

/** Who is fed the shortest of a group, until when, and how far the others could go; null where all end together. */
export type DietGap = {
  readonly who: readonly string[];
  readonly days: number;
  /** Null: for the others no end is in sight. */
  readonly othersDays: number | null;
};

const daysOf = ({ wholeDays }: End): number => wholeDays ?? Number.MAX_SAFE_INTEGER;

export function dietGapOf({ endsByEater }: Pick<CoveredGroup, 'endsByEater'>): DietGap | null {
  const days = Math.min(...endsByEater.map(daysOf));
  const others = endsByEater.filter((end) => daysOf(end) > days);
  if (others.length === 0 || others.length === endsByEater.length) return null;
  const othersDays = Math.min(...others.map(daysOf));
  return {
    who: endsByEater.filter((end) => daysOf(end) === days).map(({ name }) => name),
    days,
    othersDays: othersDays === Number.MAX_SAFE_INTEGER ? null : othersDays,
  };
}
