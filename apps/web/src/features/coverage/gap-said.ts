import type { InferResponseType } from 'hono/client';
import type { api } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { useCoverageText } from '../home/words.ts';

export type Gap = InferResponseType<(typeof api.storehouses)[':storehouse']['coverage']['gap']['$get'], 200>;

/** What the cheapest way to the target comes to, in one sentence. */
export function useGapSaid(): (gap: Gap) => string {
  const t = useText();
  const words = useCoverageText();
  const { format } = useHouse();
  return (gap) => {
    const group = gap.limitingGroup === null ? '' : (t.groups[gap.limitingGroup] ?? gap.limitingGroup);
    const money = `${format.money(gap.minorUnits)} ${format.currency}`;
    if (gap.reachesTarget) return words.wayReaches(gap.wholeDays ?? gap.targetDays, money);
    return gap.pledges.length === 0
      ? words.wayNothing(group)
      : words.wayFalls(gap.wholeDaysNow ?? 0, gap.wholeDays ?? 0, money, group);
  };
}
