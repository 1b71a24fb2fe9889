import type { Tx } from '@sheafbook/db';
import { gramsHeld, type TracePoint, traceBalance, vesselKey, walkTrace } from '@sheafbook/ledger';
import { carryOvers } from '@sheafbook/packing';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { mayHold } from '../hold/use-cases.ts';
import { carriedBy } from '../packing-session/use-cases.ts';
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
} from './queries-way.ts';
import type { WayQuery } from './schema.ts';

/** What a code names, and its whole way if that is one thing: where it came from and where each gram is or went. */
export const traceCode = (context: Context, query: WayQuery) =>
  withTx(context, async (tx) => {
    const depth = depthOf(context.actor, query.task);
    const found = await findThings(tx, context, query, depth);
    const [only, ...others] = found;
    const way = only && others.length === 0 ? await walkFrom(tx, context, { of: only, depth }) : null;
    return { found, way };
  });

export type Way = Awaited<ReturnType<typeof walkFrom>>;

async function walkFrom(tx: Tx, context: Context, { of, depth }: { of: Found; depth: Depth }) {
  const { storehouseId, householdId } = context.actor;
  const house = await loadHouseOwners(tx, storehouseId);
  const startVesselIds = await listStartVessels(tx, storehouseId, of);
  const trace = walkTrace({
    movements: await listLotMovements(tx, storehouseId, startVesselIds),
    startVesselIds,
  });
  const reached = new Set(trace.reached.map(vesselKey));
  const isSeen = ({ ownerId }: TracePoint) =>
    depth !== 'own' || ownerId === householdId || ownerId === house.commonId;
  const isInside = (point: TracePoint) => reached.has(vesselKey(point)) && isSeen(point);
  const held = gramsHeld(trace.movements, isInside);
  const balance = traceBalance(trace.movements, isInside);
  const points = trace.movements.flatMap(({ source, destination }) => [source, destination]);
  const owners = await listWayOwners(tx, storehouseId, [...new Set(points.map(({ ownerId }) => ownerId))]);
  await noteReading(tx, context, {
    of,
    depth,
    ownerIds: points.filter(isInside).map(({ ownerId }) => ownerId),
  });
  const lotIds = [...new Set([...trace.reached, ...trace.before].map(({ lotId }) => lotId))];
  const vesselIds = [...trace.reached, ...trace.before].map(({ vesselId }) => vesselId);
  const seenIds = points.filter(isInside).map(({ vesselId }) => vesselId);
  return {
    ...{ of, depth, trace, isSeen, isInside, held, balance, owners, house, ownId: householdId },
    mayRecall: mayHold(context.actor),
    bookedGrams: await sumBooked(tx, storehouseId, uniquePoints(points.filter(isInside))),
    lots: await listWayLots(tx, storehouseId, lotIds),
    vessels: await listWayVessels(tx, storehouseId, [...new Set(vesselIds)]),
    holds: await listHoldsOn(tx, storehouseId, [...new Set(seenIds)]),
    carried: await listCarried(
      tx,
      storehouseId,
      trace.reached.map(({ vesselId }) => vesselId),
    ),
  };
}

/** The same point once: the book has one account for each. */
const uniquePoints = (points: readonly TracePoint[]): TracePoint[] => [
  ...new Map(points.map((point) => [`${vesselKey(point)} ${point.ownerId}`, point])).values(),
];

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
  { of, depth, ownerIds }: { of: Found; depth: Depth; ownerIds: readonly string[] },
): Promise<void> {
  await noteHelpersRead(tx, context, 'trace');
  if (depth === 'own') return;
  const { storehouseId } = context.actor;
  const owners = depth === 'recall' ? await listWayOwners(tx, storehouseId, [...new Set(ownerIds)]) : [];
  const concerned = owners.filter(({ kind }) => kind === 'household').map(({ ownerId }) => ownerId);
  await notePrivateRead(tx, context, {
    householdIds: [...concerned, ...(of.householdId === null ? [] : [of.householdId])],
    ...{ what: 'containers', purpose: depth === 'recall' ? 'recall' : 'trace of a code' },
  });
}
