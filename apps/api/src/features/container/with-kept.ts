import type { Tx } from '@sheafbook/db';
import { presentKeepingOf, presentPlaceOf, withKeeping } from '../keeping/use-cases.ts';
import type { Shelved } from './queries.ts';

/** Containers with where they stand, whether they are held, and how they keep. */
export async function withKept(tx: Tx, storehouseId: string, rows: readonly Shelved[], todayOn: string) {
  const kept = await withKeeping(tx, storehouseId, { rows, todayOn });
  return kept.map(({ place, keeping, ...row }) => ({
    ...row,
    stands: {
      ...{ isHeld: row.isHeld, place: presentPlaceOf(place), keeping: presentKeepingOf(keeping, todayOn) },
    },
  }));
}
export type ShelvedKept = Awaited<ReturnType<typeof withKept>>[number];
