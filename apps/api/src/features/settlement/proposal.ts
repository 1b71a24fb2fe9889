import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import { bulkOf, readKeepingClass } from '@sheafbook/foods';
import { readTreatment } from '@sheafbook/keeping';
import { type ContainersToSupply, planSupplies } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { listHands } from '../packing-session/queries.ts';
import { type LoggedPour, listPacks } from '../pour-log/queries.ts';
import type { SupplyOnHand } from '../supply/queries.ts';
import { toKept } from '../supply/use-cases.ts';

/** What the pure plan reads of one container that was filled. */
export const filledToSupply = ({ pour, kind, food }: LoggedPour): ContainersToSupply => ({
  kindId: kind.containerKindId,
  capacityMicrolitres: kind.capacityMicrolitres,
  keepingClass: readKeepingClass(food.keepingClass),
  treatment: readTreatment(pour.treatment) ?? 'none',
  containers: 1,
  gramsEach: pour.targetGrams,
  ...bulkOf(food),
});

/**
 * What the log says was used of each supply, for whoever settles to put right: containers as filled, absorbers as taken out of
 * the packs where all of a size were shut again, gloves by those who came.
 */
export async function proposeUse(
  tx: Tx,
  day: { session: PackingSessionRow; pours: readonly LoggedPour[]; rows: readonly SupplyOnHand[] },
) {
  const { storehouseId, packingSessionId: sessionId } = day.session;
  const hands = await listHands(tx, storehouseId, sessionId);
  const packs = await listPacks(tx, storehouseId, sessionId);
  const people = hands.filter(({ hand }) => hand.state === 'coming' || hand.state === 'came').length;
  const filled = day.pours.filter(({ pour }) => pour.undoneEntryId === null).map(filledToSupply);
  const { lines } = planSupplies(filled, day.rows.map(toKept), { people });
  return day.rows.map((row) => {
    const planned = lines.find(({ supplyId }) => supplyId === row.supply.supplyId)?.usedPieces ?? 0;
    const ofSize = packs.filter(({ sizeMillilitres }) => sizeMillilitres === row.supply.sizeMillilitres);
    const isCounted = ofSize.length > 0 && ofSize.every(({ shutAt }) => shutAt !== null);
    const taken = sumOf(ofSize.map(({ packets, packetsLeft }) => packets - (packetsLeft ?? 0)));
    return { row, usedPieces: row.supply.kind === 'absorber' && isCounted ? taken : planned };
  });
}
