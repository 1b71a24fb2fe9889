import type { VesselKind } from '../outside.ts';
import type { TraceMovement, TracePoint } from './walk-trace.ts';

/**
 * Grams that came into what is looked at, left it, or lie in it still. `ownerId` is whose they were inside, `otherOwnerId`
 * whose outside; `vesselKind` is where they came from or went to, and for what is left where it lies. `isHandedOver` tells
 * that they changed hands where they stood.
 * Units: grams. Errors: none.
 */
export type TraceLine = {
  readonly way: 'in' | 'out' | 'left';
  readonly vesselKind: VesselKind;
  readonly ownerId: string;
  readonly otherOwnerId: string;
  readonly isHandedOver: boolean;
  readonly end: string;
  readonly grams: number;
};

/** What came in, went out and is left, and whether that adds up. Units: grams. Errors: none. */
export type TraceBalance = {
  readonly lines: readonly TraceLine[];
  readonly inGrams: number;
  readonly outGrams: number;
  readonly leftGrams: number;
  /** Part of the grams that came in which is known by name: all but what went or came unexplained, in thousandths. */
  readonly knownPermille: number;
};

/**
 * The balance of whatever a caller says is inside: in = out + left, to the gram, for any choice of points. Movements between
 * two points inside are no one's business here and cancel.
 * Units: grams; thousandths, rounded down. Shape: lines in the order of in, out and left, the largest first.
 * Errors: none. Source: job map 6 and 12, `received = still there + with members + gifted + eaten + spoiled + unexplained`.
 */
export function traceBalance(
  movements: readonly TraceMovement[],
  isInside: (point: TracePoint) => boolean,
): TraceBalance {
  const lines = addUp([...linesAcross(movements, isInside), ...linesLeft(movements, isInside)]).toSorted(
    (a, b) =>
      WAYS.indexOf(a.way) - WAYS.indexOf(b.way) || b.grams - a.grams || (lineKey(a) < lineKey(b) ? -1 : 1),
  );
  const sumOfWay = (way: TraceLine['way']) =>
    lines.filter((line) => line.way === way).reduce((sum, { grams }) => sum + grams, 0);
  const inGrams = sumOfWay('in');
  const unknownGrams = lines
    .filter(({ vesselKind }) => vesselKind === 'unexplained')
    .reduce((sum, { grams }) => sum + grams, 0);
  return {
    ...{ lines, inGrams, outGrams: sumOfWay('out'), leftGrams: sumOfWay('left') },
    knownPermille:
      inGrams === 0 ? 1000 : Math.max(0, Math.floor((1000 * (inGrams - unknownGrams)) / inGrams)),
  };
}

const WAYS: readonly TraceLine['way'][] = ['in', 'out', 'left'];

const lineKey = (line: Omit<TraceLine, 'grams'>): string =>
  JSON.stringify([line.way, line.vesselKind, line.ownerId, line.otherOwnerId, line.isHandedOver, line.end]);

/** Lines that are alike but for their grams as one. */
function addUp(lines: readonly TraceLine[]): TraceLine[] {
  const sums = new Map<string, TraceLine>();
  for (const line of lines) {
    const key = lineKey(line);
    sums.set(key, { ...line, grams: (sums.get(key)?.grams ?? 0) + line.grams });
  }
  return [...sums.values()];
}

const linesAcross = (
  movements: readonly TraceMovement[],
  isInside: (point: TracePoint) => boolean,
): TraceLine[] =>
  movements.flatMap(({ source, destination, amountGrams, end }): TraceLine[] => {
    const isOut = isInside(source);
    if (isOut === isInside(destination)) return [];
    const [inner, other] = isOut ? [source, destination] : [destination, source];
    return [
      {
        way: isOut ? 'out' : 'in',
        ...{ vesselKind: other.vesselKind, ownerId: inner.ownerId, otherOwnerId: other.ownerId, end },
        ...{ isHandedOver: source.vesselId === destination.vesselId, grams: amountGrams },
      },
    ];
  });

/** What lies inside by kind of vessel and owner. */
const linesLeft = (
  movements: readonly TraceMovement[],
  isInside: (point: TracePoint) => boolean,
): TraceLine[] =>
  gramsHeld(movements, isInside).map(
    ({ point: { vesselKind, ownerId }, grams }): TraceLine => ({
      ...{ way: 'left', vesselKind, ownerId, otherOwnerId: ownerId, isHandedOver: false, end: '', grams },
    }),
  );

/** Grams that went from one vessel and owner to another. Units: grams. Errors: none. */
export type TraceFlow = {
  readonly source: TracePoint;
  readonly destination: TracePoint;
  readonly end: string;
  readonly grams: number;
};

/**
 * The movements summed from vessel to vessel and owner to owner, in the order in which they first happened. What changed
 * hands where it stood flowed nowhere.
 * Units: grams. Errors: none.
 */
export function traceFlows(movements: readonly TraceMovement[]): TraceFlow[] {
  const sums = new Map<string, TraceFlow>();
  for (const { source, destination, end, amountGrams } of movements) {
    if (source.vesselId === destination.vesselId) continue;
    const { vesselId, lotId, ownerId } = source;
    const key = JSON.stringify([vesselId, lotId, ownerId, destination.vesselId, destination.ownerId, end]);
    const grams = (sums.get(key)?.grams ?? 0) + amountGrams;
    sums.set(key, { source, destination, end, grams });
  }
  return [...sums.values()];
}

/** Grams in each vessel of each owner, those with nothing left out. Units: grams. Errors: none. */
export function gramsHeld(
  movements: readonly TraceMovement[],
  isInside: (point: TracePoint) => boolean,
): { readonly point: TracePoint; readonly grams: number }[] {
  const held = new Map<string, { point: TracePoint; grams: number }>();
  const add = (point: TracePoint, grams: number) => {
    if (!isInside(point)) return;
    const key = JSON.stringify([point.vesselId, point.lotId, point.ownerId]);
    held.set(key, { point, grams: (held.get(key)?.grams ?? 0) + grams });
  };
  for (const { source, destination, amountGrams } of movements) {
    add(source, -amountGrams);
    add(destination, amountGrams);
  }
  return [...held.values()].filter(({ grams }) => grams !== 0);
}
