import type { Tx } from '@sheafbook/db';
import { assert } from '@sheafbook/units';
import { loadKept, presentKeepingOf, presentPlaceOf } from '../keeping/use-cases.ts';
import type { Shelved } from './queries.ts';

/** Containers with where they stand, whether they are held, and how they keep. */
export async function withKept(tx: Tx, storehouseId: string, rows: readonly Shelved[], todayOn: string) {
  const containerIds = rows.map(({ container }) => container.containerId);
  const kept = await loadKept(tx, storehouseId, { containerIds }, todayOn);
  const keptById = new Map(kept.map((one) => [one.container.containerId, one]));
  return rows.map((row) => {
    const one = keptById.get(row.container.containerId);
    assert(one, 'each container was asked for');
    const { isHeld, place, keeping } = one;
    const stands = { isHeld, place: presentPlaceOf(place), keeping: presentKeepingOf(keeping, todayOn) };
    return { ...row, stands };
  });
}
export type ShelvedKept = Awaited<ReturnType<typeof withKept>>[number];
