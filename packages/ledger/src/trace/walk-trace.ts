import { assert } from '@sheafbook/units';
import { isOutside, type VesselKind } from '../outside.ts';
import { standingMovements } from '../standing.ts';

/** Where grams of a lot are at one moment, and whose they are. Units: none. Errors: none. */
export type TracePoint = {
  readonly vesselId: string;
  readonly vesselKind: VesselKind;
  readonly lotId: string;
  readonly ownerId: string;
};

/** A posted movement of grams between two points of one lot. Units: grams. Errors: none. */
export type TraceMovement = {
  readonly entryId: string;
  readonly reversesEntryId: string | null;
  readonly source: TracePoint;
  readonly destination: TracePoint;
  readonly amountGrams: number;
  /** Which of several ends outside it went to, such as a pantry; empty where there is but one. */
  readonly end: string;
};

/** A bag, a container, or the part of a kitchen that is of one lot. Units: none. Errors: none. */
export type TracedVessel = Pick<TracePoint, 'vesselId' | 'vesselKind' | 'lotId'> & {
  readonly isStart: boolean;
};

/**
 * The way of some food. `reached` holds the vessels it began in and all that was poured out of them, in the order in which
 * they were come upon; `before` what had been poured into the first ones, nearest first; `movements` what stands of those
 * that touch a reached vessel. Units: grams. Errors: none.
 */
export type LotTrace = {
  readonly reached: readonly TracedVessel[];
  readonly before: readonly TracedVessel[];
  readonly movements: readonly TraceMovement[];
};

/**
 * Walks forward and back from some vessels. What was undone carried nothing. Grams of one lot that meet in a vessel can't be
 * told apart again, so the whole of it is reached; grams of different lots never mix.
 * Units: grams. Errors: AssertionError when a movement goes from one lot into another. Source: job map 12.
 */
export function walkTrace(input: {
  readonly movements: readonly TraceMovement[];
  readonly startVesselIds: readonly string[];
}): LotTrace {
  const movements = standingMovements(input.movements);
  for (const { source, destination } of movements)
    assert(source.lotId === destination.lotId, 'grams of one lot stay of that lot');
  const starts = new Set(input.startVesselIds);
  const first = movements
    .flatMap(({ source, destination }) => [source, destination])
    .filter(({ vesselId, vesselKind }) => starts.has(vesselId) && !isOutside(vesselKind));
  const reached = spread(first, stepsOf(movements, 'source', 'destination'));
  const isReached = (point: TracePoint) => reached.has(vesselKey(point));
  const before = spread(first, stepsOf(movements, 'destination', 'source'));
  const seen = (point: TracePoint): TracedVessel => ({
    ...{ vesselId: point.vesselId, vesselKind: point.vesselKind, lotId: point.lotId },
    isStart: starts.has(point.vesselId),
  });
  return {
    reached: [...reached.values()].map(seen),
    before: [...before.values()].filter((point) => !isReached(point)).map(seen),
    movements: movements.filter(({ source, destination }) => isReached(source) || isReached(destination)),
  };
}

/** One text for each vessel and lot; a kitchen holds many lots side by side. Units: none. Errors: none. */
export const vesselKey = ({ vesselId, lotId }: Pick<TracePoint, 'vesselId' | 'lotId'>): string =>
  `${vesselId} ${lotId}`;

/** The points of what holds stock that lie a step further from each vessel, one or more of each. */
function stepsOf(
  movements: readonly TraceMovement[],
  from: 'source' | 'destination',
  to: 'source' | 'destination',
): (key: string) => readonly TracePoint[] {
  const steps = new Map<string, TracePoint[]>();
  for (const movement of movements) {
    if (isOutside(movement[to].vesselKind)) continue;
    const key = vesselKey(movement[from]);
    const further = steps.get(key) ?? [];
    further.push(movement[to]);
    steps.set(key, further);
  }
  return (key) => steps.get(key) ?? [];
}

/** Breadth first, so that what is nearest comes first. */
function spread(
  first: readonly TracePoint[],
  stepsFrom: (key: string) => readonly TracePoint[],
): Map<string, TracePoint> {
  const found = new Map(first.map((point) => [vesselKey(point), point] as const));
  for (const key of found.keys())
    for (const point of stepsFrom(key)) if (!found.has(vesselKey(point))) found.set(vesselKey(point), point);
  return found;
}
