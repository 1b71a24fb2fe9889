import type { PackingSessionRow } from '@sheafbook/db/tables';
import { bulkOf, readKeepingClass } from '@sheafbook/foods';
import { readTreatment } from '@sheafbook/keeping';
import {
  ABSORBER_WINDOW,
  type ContainersToSupply,
  type KeptSupply,
  placeCrew,
  planOpenPack,
  type SupplyKind,
} from '@sheafbook/packing';
import { fractionToNumber } from '@sheafbook/units';
import type { WishedPacking } from '../packing-session/queries.ts';
import type { SupplyOnHand } from './queries.ts';

/** What the pure plan reads of what a household wants packed. */
export const toSupply = ({ wish, food, kind }: WishedPacking): ContainersToSupply => ({
  kindId: kind.containerKindId,
  capacityMicrolitres: kind.capacityMicrolitres,
  keepingClass: readKeepingClass(food.keepingClass),
  treatment: readTreatment(wish.treatment) ?? 'none',
  containers: wish.containers,
  gramsEach: wish.gramsEach,
  ...bulkOf(food),
});

export const toKept = ({ supply, onHandPieces }: SupplyOnHand): KeptSupply => ({
  supplyId: supply.supplyId,
  kind: supply.kind as SupplyKind,
  kindId: supply.containerKindId,
  sizeMillilitres: supply.sizeMillilitres,
  piecesEach: supply.piecesEach,
  onHandPieces,
  packPieces: supply.packPieces,
  packMinorUnits: supply.packMinorUnits,
});

/** How long a pack of absorbers lasts on the day's lines, and into how many jars it goes so that none waits too long. */
export function timeOpenPack(session: PackingSessionRow, packPieces: number) {
  const { stations, peopleALine: people, lines } = session;
  const crew = placeCrew(stations, people);
  if (!crew) return null;
  const secondsPerContainer = fractionToNumber(crew.cycleSeconds) / lines;
  const { servedInWindow, jars, packSeconds } = planOpenPack({
    ...{ packets: packPieces, packetsPerContainer: 1, secondsPerContainer },
  });
  return {
    ...{ servedInWindow, jars, packSeconds: Math.round(packSeconds) },
    windowSeconds: ABSORBER_WINDOW.windowSeconds,
  };
}
