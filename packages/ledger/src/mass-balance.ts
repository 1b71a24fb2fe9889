import { assert, type Fraction, fraction } from '@sheafbook/units';
import { isOutside, OUTSIDE_KINDS, type OutsideKind, type VesselKind } from './outside.ts';
import { standingMovements } from './standing.ts';

/** Where a movement of grams starts or ends. Units: none. Errors: none. */
export type MassPlace = { readonly vesselId: string; readonly ownerId: string };

/** A posted movement of grams, with what its entry reverses. Units: grams. Errors: none. */
export type MassMovement = {
  readonly entryId: string;
  readonly reversesEntryId: string | null;
  readonly source: MassPlace;
  readonly destination: MassPlace;
  readonly amountGrams: number;
};

/**
 * Every gram of a lot, or of all lots of a buy.
 * Units: grams. `inGrams` came from suppliers and by transforms; `outGrams` by outside vessel (never the supplier's);
 * `onHandGrams` is in bags, containers and kitchens; `pouredGrams` went from bag to container and was not undone;
 * `residualGrams` is in − out − on hand, which is 0 in a sound book; `reconciled` is the part of what came in that is
 * accounted for by name. Errors: none.
 */
export type MassBalance = {
  readonly inGrams: number;
  readonly outGrams: Readonly<Record<Exclude<OutsideKind, 'supplier'>, number>>;
  readonly inBagsGrams: number;
  readonly inContainersGrams: number;
  readonly inKitchensGrams: number;
  readonly onHandGrams: number;
  readonly byOwnerGrams: ReadonlyMap<string, number>;
  readonly pouredGrams: number;
  readonly residualGrams: number;
  readonly reconciled: Fraction;
};

/**
 * Adds up the movements of one lot, or of several lots together. The unexplained may stand below zero: a re-weigh
 * that found more than was booked. Grams that a transform made out of another lot count as come in.
 * Poured is summed from movements that no entry reversed, since running totals count what went both ways.
 * Units: grams. Errors: AssertionError when a vessel's kind is not given. Source: job map 6; ledger-notes 6.3.
 */
export function massBalance(input: {
  readonly movements: readonly MassMovement[];
  readonly vesselKinds: ReadonlyMap<string, VesselKind>;
}): MassBalance {
  const kindOf = (place: MassPlace) => findKind(input.vesselKinds, place.vesselId);
  const byKind = new Map<VesselKind, number>();
  const byOwner = new Map<string, number>();
  for (const { source, destination, amountGrams } of input.movements) {
    add(byKind, kindOf(source), -amountGrams);
    add(byKind, kindOf(destination), amountGrams);
    if (!isOutside(kindOf(source))) add(byOwner, source.ownerId, -amountGrams);
    if (!isOutside(kindOf(destination))) add(byOwner, destination.ownerId, amountGrams);
  }
  const gramsOf = (kind: VesselKind) => byKind.get(kind) ?? 0;
  const transformedGrams = gramsOf('transformed');
  const inGrams = Math.max(0, -transformedGrams) - gramsOf('supplier');
  const outGrams = Object.fromEntries(
    OUTSIDE_KINDS.filter((kind) => kind !== 'supplier').map((kind) => [kind, gramsOf(kind)]),
  ) as Record<Exclude<OutsideKind, 'supplier'>, number>;
  outGrams.transformed = Math.max(0, transformedGrams);
  const onHandGrams = gramsOf('bag') + gramsOf('container') + gramsOf('kitchen');
  const goneGrams = Object.values(outGrams).reduce((sum, grams) => sum + grams, 0);
  return {
    inGrams,
    outGrams,
    inBagsGrams: gramsOf('bag'),
    inContainersGrams: gramsOf('container'),
    inKitchensGrams: gramsOf('kitchen'),
    onHandGrams,
    byOwnerGrams: byOwner,
    pouredGrams: sumPoured(input.movements, kindOf),
    residualGrams: inGrams - goneGrams - onHandGrams,
    reconciled: inGrams > 0 ? fraction(inGrams - Math.abs(outGrams.unexplained), inGrams) : fraction(1),
  };
}

function sumPoured(movements: readonly MassMovement[], kindOf: (place: MassPlace) => VesselKind): number {
  return standingMovements(movements)
    .filter(({ source, destination }) => kindOf(source) === 'bag' && kindOf(destination) === 'container')
    .reduce((sum, movement) => sum + movement.amountGrams, 0);
}

function findKind(kinds: ReadonlyMap<string, VesselKind>, vesselId: string): VesselKind {
  const kind = kinds.get(vesselId);
  assert(kind, `the kind of vessel ${vesselId} is not given`);
  return kind;
}

function add<Key>(sums: Map<Key, number>, key: Key, grams: number): void {
  sums.set(key, (sums.get(key) ?? 0) + grams);
}
