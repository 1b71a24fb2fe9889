import type { Tx } from '@sheafbook/db';
import {
  gramsHeld,
  type LotTrace,
  type TracePoint,
  traceBalance,
  vesselKey,
  walkTrace,
} from '@sheafbook/ledger';
import { carriedBy, carryOvers } from '@sheafbook/packing';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { mayHold } from '../hold/use-cases.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { findThings } from './find-code.ts';
import { type Depth, depthOf } from './policy.ts';
import type { Found } from './queries-find.ts';
import {
  listHoldsOn,
  listLinePours,
  listLotMovements,
  listStartVessels,
  listWayLots,
  listWayOwners,
  listWayVessels,
  sumBooked,
  type WayOwner,
} from './queries-way.ts';
import type { WayQuery } from './schema.ts';

/** What a code names, and its whole way if that is one thing: where it came from and where each gram is or went. */
export const traceCode = (context: Context, query: WayQuery) => {
  const depth = depthOf(context.actor, query.task);
  const inside = async (tx: Tx) => {
    const found = await findThings(tx, context, query, depth);
    const [only, ...others] = found;
    const way = only && others.length === 0 ? await walkFrom(tx, context, { of: only, depth }) : null;
    return { found, way };
  };
  // What households have in a place of the store's is read in a recall alone.
  return withTx(context, inside, depth === 'recall' ? { task: 'hold' } : {});
};

export type Way = Awaited<ReturnType<typeof walkFrom>>;

async function walkFrom(tx: Tx, context: Context, { of, depth }: { of: Found; depth: Depth }) {
  const { storehouseId, householdId } = context.actor;
  const { commonId } = await loadHouseOwners(tx, storehouseId);
  const startVesselIds = await listStartVessels(tx, storehouseId, of);
  const trace = walkTrace({
    movements: await listLotMovements(tx, storehouseId, startVesselIds),
    startVesselIds,
  });
  const reached = new Set(trace.reached.map(vesselKey));
  const isSeen = ({ ownerId }: TracePoint) =>
    depth !== 'own' || ownerId === householdId || ownerId === commonId;
  const isInside = (point: TracePoint) => reached.has(vesselKey(point)) && isSeen(point);
  const points = pointsOf(trace);
  const inside = points.filter(isInside);
  const owners = await listWayOwners(tx, storehouseId, eachOf(points, 'ownerId'));
  await noteReading(tx, context, { of, depth, owners, inside });
  const vessels = [...trace.reached, ...trace.before];
  const found = await listWayVessels(tx, storehouseId, eachOf(vessels, 'vesselId'));
  return {
    ...{ of, depth, trace, isSeen, ownId: householdId, mayRecall: mayHold(context.actor) },
    startKeys: new Set(trace.reached.filter(({ isStart }) => isStart).map(vesselKey)),
    held: gramsHeld(trace.movements, isInside).map((one) => ({ ...one, key: vesselKey(one.point) })),
    balance: traceBalance(trace.movements, isInside),
    bookedGrams: await sumBooked(tx, storehouseId, inside),
    lots: await listWayLots(tx, storehouseId, eachOf(vessels, 'lotId')),
    owners: new Map(owners.map((owner) => [owner.ownerId, owner])),
    vessels: new Map(found.map((vessel) => [vessel.vesselId, vessel])),
    holds: await listHoldsOn(tx, storehouseId, eachOf(inside, 'vesselId')),
    carried: await listCarried(tx, storehouseId, eachOf(trace.reached, 'vesselId')),
  };
}

/** Where grams were moved from and to, each point once: the book has one account for each. */
function pointsOf({ movements }: LotTrace): TracePoint[] {
  const points = movements.flatMap(({ source, destination }) => [source, destination]);
  return [...new Map(points.map((point) => [`${vesselKey(point)} ${point.ownerId}`, point])).values()];
}

const eachOf = <Key extends keyof TracePoint>(
  points: readonly Pick<TracePoint, Key>[],
  key: Key,
): TracePoint[Key][] => [...new Set(points.map((point) => point[key]))];

/** What ran after reached food on its line; which of them a reader sees is for `present`. */
async function listCarried(tx: Tx, storehouseId: string, reachedIds: readonly string[]) {
  const pours = await listLinePours(tx, storehouseId, reachedIds);
  const reached = new Set(reachedIds);
  const byId = new Map(pours.map((pour) => [pour.containerId, pour]));
  const withCarried = pours.map((pour) => ({ ...pour, carries: carriedBy(pour) }));
  return carryOvers(withCarried, (id) => reached.has(id)).flatMap((found) => {
    const pour = byId.get(found.containerId);
    const after = byId.get(found.afterContainerId);
    return pour && after ? [{ ...found, pour, after }] : [];
  });
}

/** In a recall every household with a part in it finds that somebody looked; else the one whose container it is. */
async function noteReading(
  tx: Tx,
  context: Context,
  reading: { of: Found; depth: Depth; owners: readonly WayOwner[]; inside: readonly TracePoint[] },
): Promise<void> {
  await noteHelpersRead(tx, context, 'trace');
  const { of, depth, owners, inside } = reading;
  if (depth === 'own') return;
  const insideIds = new Set(eachOf(inside, 'ownerId'));
  const concerned = owners.filter(({ kind, ownerId }) => kind === 'household' && insideIds.has(ownerId));
  const householdIds = depth === 'recall' ? concerned.map(({ ownerId }) => ownerId) : [];
  await notePrivateRead(tx, context, {
    householdIds: [...householdIds, ...(of.householdId === null ? [] : [of.householdId])],
    ...{ what: 'containers', purpose: depth === 'recall' ? 'recall' : 'trace of a code' },
  });
}
