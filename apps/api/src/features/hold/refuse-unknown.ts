import type { Tx } from '@sheafbook/db';
import { containers, deliveries, foods, lots, packingSessions, places } from '@sheafbook/db/tables';
import { and, eq, inArray, isNull } from 'drizzle-orm';
import { fieldProblem } from '../../platform/problem.ts';
import type { HoldOf } from './schema.ts';

/** Refuses a hold of what is not in this storehouse, and names the field. */
export async function refuseUnknown(tx: Tx, storehouseId: string, of: HoldOf): Promise<void> {
  const isHere = await isKnown(tx, storehouseId, of);
  if (isHere) return;
  throw fieldProblem('thing-not-found', `of.${FIELD_OF[of.scope]}`, 'There is no such thing here.');
}

const FIELD_OF: Readonly<Record<HoldOf['scope'], string>> = {
  lot: 'lotId',
  containers: 'containerIds',
  session: 'sessionId',
  delivery: 'deliveryId',
  mark: 'mark',
  food: 'foodId',
  place: 'placeId',
};

async function isKnown(tx: Tx, storehouseId: string, of: HoldOf): Promise<boolean> {
  switch (of.scope) {
    case 'lot':
      return (await tx.$count(lots, and(eq(lots.storehouseId, storehouseId), eq(lots.lotId, of.lotId)))) > 0;
    case 'containers': {
      const ids = [...new Set(of.containerIds)];
      const here = and(eq(containers.storehouseId, storehouseId), inArray(containers.containerId, ids));
      return (await tx.$count(containers, here)) === ids.length;
    }
    case 'session': {
      const here = eq(packingSessions.packingSessionId, of.sessionId);
      return (
        (await tx.$count(packingSessions, and(eq(packingSessions.storehouseId, storehouseId), here))) > 0
      );
    }
    case 'delivery': {
      const here = eq(deliveries.deliveryId, of.deliveryId);
      return (await tx.$count(deliveries, and(eq(deliveries.storehouseId, storehouseId), here))) > 0;
    }
    case 'mark': {
      const here = and(eq(lots.supplierId, of.supplierId), eq(lots.supplierMark, of.mark));
      return (await tx.$count(lots, and(eq(lots.storehouseId, storehouseId), here))) > 0;
    }
    case 'food':
      return (
        (await tx.$count(foods, and(eq(foods.storehouseId, storehouseId), eq(foods.foodId, of.foodId)))) > 0
      );
    case 'place': {
      // Where a household keeps its own is nobody's to name; whoever finds something there tells it by the container.
      const here = and(eq(places.placeId, of.placeId), isNull(places.householdId));
      return (await tx.$count(places, and(eq(places.storehouseId, storehouseId), here))) > 0;
    }
  }
}
