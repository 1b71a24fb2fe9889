import { useHouse } from '../../ui/house.ts';
import type { Agreement } from './queries.ts';
import { useBankText } from './words.ts';

/** One sentence that says where the bank stands. */
export function useStanding({ counts, isTold, differenceMinorUnits, throughOn }: Agreement): string {
  const words = useBankText();
  const { format } = useHouse();
  if (counts.open > 0) return words.waiting(counts.open);
  if (counts.done + counts.setAside === 0) return words.nothingYet;
  if (!isTold || differenceMinorUnits === null) return words.allPlaced;
  const day = format.day(throughOn);
  return differenceMinorUnits === 0
    ? words.agrees(day)
    : words.differs(format.money(Math.abs(differenceMinorUnits)), day);
}
