import { bodyOf } from './buy.ts';
import type { TestHall } from './packing.ts';
import type { TestStorehouse } from './storehouse.ts';

/** What an invented maker allows. */
export const LIMITS = {
  ...{ widthLeast: 110, widthMost: 120, thicknessLeast: 55, thicknessMost: 62 },
  ...{ countersinkLeast: 120, countersinkMost: 130, overlapPercent: 55, lidPlate: 10, bodyPlate: 9 },
  source: 'an invented maker’s sheet',
};
// Overlap 75 + 78 + 10 − 115 = 48 of 115 − 2 × 10 − 9 = 86: 55.8 %.
export const GOOD = {
  ...{ widthMils: 115, thicknessMils: 58, countersinkMils: 125, coverHookMils: 75, bodyHookMils: 78 },
};
export const THICK = { ...GOOD, thicknessMils: 66 };

/** A seamer with its maker's limits for No. 10 cans, checked by whoever leads the packing. */
export async function aSeamer(storehouse: TestStorehouse, hall: TestHall, name = 'Seamer') {
  const { caller } = hall.lead;
  const kindId = hall.shelves.kinds['can-no-10'] ?? '';
  const machine = bodyOf(
    await caller.post(`${storehouse.path}/seal-machines`, { name, kind: 'can-seamer' }),
    201,
  );
  bodyOf(await caller.put(`${storehouse.path}/seam-limits/${kindId}`, LIMITS));
  return {
    machineId: machine.id as string,
    /** A good teardown of a can that was closed to try it, unless a test says otherwise. */
    check: (day: string, wish: Record<string, unknown> = {}) =>
      caller.post(`${storehouse.path}/seal-checks`, {
        ...{ machineId: machine.id, sessionId: day.split('/').at(-1), line: 1, containerKindId: kindId },
        ...{ how: 'teardown', looksGood: true, measures: GOOD, serial: null, ...wish },
      }),
  };
}
export type TestSeamer = Awaited<ReturnType<typeof aSeamer>>;
