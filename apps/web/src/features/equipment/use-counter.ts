import { put, throwAway, useWaiting } from '../../api/outbox.ts';
import { useHouse } from '../../ui/house.ts';
import { counterPlace } from './counter-place.ts';
import type { LoanAct } from './loan-act.ts';

/** What this phone has written down of one booking or loan. The shell sends it; this only writes. */
export function useCounter(of: string) {
  const house = useHouse();
  const place = counterPlace(house);
  const kept = useWaiting<LoanAct>(place).findLast(({ act }) => act.of === of);
  return {
    kept,
    waits: kept !== undefined && kept.refusal === null,
    refused: kept?.refusal ? kept : undefined,
    /** Kept first, sent after; what was refused before gives way to it. */
    write(act: LoanAct): void {
      const before = kept;
      put(place, act);
      if (before) throwAway(place, before.id);
    },
  };
}
