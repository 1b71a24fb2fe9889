import type { HasBulk, KeepingClass } from '@sheafbook/foods';
import type { TreatmentCode } from '@sheafbook/keeping';
import { assert, assertWhole, sumOf } from '@sheafbook/units';
import { ABSORBER_SIZES, chooseAbsorbers } from './absorbers.ts';
import { dryIceOf } from './dry-ice.ts';
import { airBetweenKernels } from './oxygen.ts';
import { planSupply, SCRAP_PERCENT, type SupplyLine } from './supplies.ts';
import { voidFractionOf } from './void-fraction.ts';

/** The sorts of things that a packing day uses up. Units: none. Errors: none. */
export const SUPPLY_KINDS = [
  'container',
  'lid',
  'liner',
  'carton',
  'absorber',
  'dry-ice',
  'label',
  'glove',
  'other',
] as const;

/** One of `SUPPLY_KINDS`. Units: none. Errors: none. */
export type SupplyKind = (typeof SUPPLY_KINDS)[number];

/** Containers alike that are to be filled. Units: microlitres, containers, whole grams. Errors: none by itself. */
export type ContainersToSupply = HasBulk & {
  readonly kindId: string;
  readonly capacityMicrolitres: number;
  readonly keepingClass: KeepingClass | null;
  readonly treatment: TreatmentCode;
  readonly containers: number;
  readonly gramsEach: number;
};

/**
 * A supply that the store keeps. `kindId` says for which containers a container, lid, liner or carton is, `sizeMillilitres` how
 * much oxygen an absorber takes up. Gloves are taken `piecesEach` by each helper, the rest by each container, `other` once a
 * day; a carton holds `piecesEach` containers.
 * Units: pieces (grams of dry ice), minor units; null is unknown. Errors: none by itself.
 */
export type KeptSupply = {
  readonly supplyId: string;
  readonly kind: SupplyKind;
  readonly kindId: string | null;
  readonly sizeMillilitres: number | null;
  readonly piecesEach: number;
  readonly onHandPieces: number;
  readonly packPieces: number;
  readonly packMinorUnits: number | null;
};

/** Something that containers use up. Units: pieces, or grams of dry ice. Errors: none by itself. */
export type SupplyUse = Pick<KeptSupply, 'kind' | 'kindId' | 'sizeMillilitres'> & { readonly pieces: number };

/** What a day needs of a supply, without what may spoil and with it. Units: pieces, packs, minor units. Errors: none. */
export type PlannedSupply = SupplyLine & { readonly usedPieces: number };

/**
 * What a day needs of everything the store keeps, and what it needs that the store keeps none of: containers that their
 * households bring, or a gap to close.
 * Units: pieces. Errors: none by itself.
 */
export type SuppliesPlan = {
  readonly lines: readonly PlannedSupply[];
  readonly unkept: readonly SupplyUse[];
};

/** Spoilt pieces by sort, in per cent. Units: per cent. Errors: none. Source: common practice, no source. */
const SCRAP_OF: Readonly<Record<SupplyKind, number>> = {
  container: SCRAP_PERCENT.container,
  lid: SCRAP_PERCENT.lid,
  liner: SCRAP_PERCENT.lid,
  carton: SCRAP_PERCENT.carton,
  absorber: SCRAP_PERCENT.absorber,
  'dry-ice': 10, // what is gone before it is in a pail
  label: SCRAP_PERCENT.label,
  glove: 0,
  other: 0,
};

/**
 * What containers alike use up: themselves, their lids, liners, cartons and labels, packets for the air in them, or dry ice. Where a
 * food's bulk is unknown the container counts as full, whose air between kernels is planned wide.
 * Units: pieces, grams of dry ice. Shape: packets of the sizes given, or of all that are sold when none is given.
 * Errors: AssertionError when a figure is not whole and ≥ 0.
 */
export function usesOf(wish: ContainersToSupply, packetSizes: readonly number[] = []): SupplyUse[] {
  const { kindId, containers, treatment } = wish;
  assertWhole(containers, 'containers');
  const plain = (kind: SupplyKind, of: string | null = kindId): SupplyUse => ({
    ...{ kind, kindId: of, sizeMillilitres: null, pieces: containers },
  });
  const uses = [plain('container'), plain('lid'), plain('liner'), plain('carton'), plain('label', null)];
  const ice = dryIceOf(wish);
  if (ice) uses.push({ ...plain('dry-ice', null), pieces: ice.gramsInAll });
  if (treatment === 'oxygen-absorber')
    for (const { sizeMillilitres, count } of packetsOf(wish, packetSizes))
      uses.push({ ...plain('absorber', null), sizeMillilitres, pieces: containers * count });
  return uses;
}

/** The packets for the air in one container. */
function packetsOf(wish: ContainersToSupply, sizes: readonly number[]) {
  const capacity = wish.capacityMicrolitres / 1000;
  const dense = wish.bulkMilligramsPerMillilitre;
  const filled = dense === null ? capacity : Math.min(capacity, (wish.gramsEach * 1000) / dense);
  const air = airBetweenKernels(filled, voidFractionOf(wish.keepingClass), capacity - filled);
  return chooseAbsorbers(air, sizes.length > 0 ? sizes : ABSORBER_SIZES)?.packets ?? [];
}

/**
 * How much oxygen the packets in some containers take up: those of one size where it is named, or all. A pail takes several
 * packets where a can takes one, so this, and no count of containers, is what a cost of absorbers is shared by.
 * Units: millilitres of oxygen. Errors: AssertionError when a figure is not whole and ≥ 0.
 */
export function oxygenTaken(
  wishes: readonly ContainersToSupply[],
  { sizes, sizeMillilitres }: { readonly sizes: readonly number[]; readonly sizeMillilitres: number | null },
): number {
  const uses = wishes.flatMap((wish) => usesOf(wish, sizes)).filter(({ kind }) => kind === 'absorber');
  const own = uses.filter((use) => sizeMillilitres === null || use.sizeMillilitres === sizeMillilitres);
  return sumOf(own.map((use) => use.pieces * (use.sizeMillilitres ?? 0)));
}

/**
 * Everything that a day uses up, to the piece, with what may spoil, what the store has of it, and the whole packs to buy.
 * Units: pieces, packs, minor units. Shape: `lines` in the order of `kept`, those left out that the day needs nothing of;
 * `unkept` by sort and size. A lid, a liner, a carton or a label that the store keeps none of is not missed.
 * Errors: AssertionError when a figure is not whole and ≥ 0.
 */
export function planSupplies(
  wishes: readonly ContainersToSupply[],
  kept: readonly KeptSupply[],
  { people }: { readonly people: number },
): SuppliesPlan {
  assertWhole(people, 'people');
  const uses = wishes.flatMap((wish) => usesOf(wish, sizesKept(kept)));
  const lines = kept.flatMap((supply) => {
    const units = unitsFor(supply, uses, { people, isADay: wishes.length > 0 });
    return units === 0 ? [] : [planned(supply, units)];
  });
  const missing = uses.filter(
    (use) =>
      !['lid', 'liner', 'carton', 'label'].includes(use.kind) && !kept.some((supply) => isFor(supply, use)),
  );
  return { lines, unkept: gathered(missing) };
}

/** The sizes of absorbers that the store keeps. Units: millilitres of oxygen. Errors: none. */
export const sizesKept = (kept: readonly KeptSupply[]): number[] =>
  kept.flatMap(({ sizeMillilitres }) => (sizeMillilitres === null ? [] : [sizeMillilitres]));

/** Whether a supply is what containers use. Units: none. Errors: none. */
export const isFor = (supply: Pick<KeptSupply, 'kind' | 'kindId' | 'sizeMillilitres'>, use: SupplyUse) =>
  supply.kind === use.kind && supply.kindId === use.kindId && supply.sizeMillilitres === use.sizeMillilitres;

/** How many times pieces are taken: by each container, helper or day, or by each carton that is begun. */
function unitsFor(
  supply: KeptSupply,
  uses: readonly SupplyUse[],
  { people, isADay }: { people: number; isADay: boolean },
): number {
  if (!isADay) return 0;
  if (supply.kind === 'glove') return people;
  if (supply.kind === 'other') return 1;
  const times = sumOf(uses.filter((use) => isFor(supply, use)).map(({ pieces }) => pieces));
  return supply.kind === 'carton' ? Math.ceil(times / supply.piecesEach) : times;
}

function planned(supply: KeptSupply, units: number): PlannedSupply {
  const perUnit = supply.kind === 'carton' ? 1 : supply.piecesEach;
  const line = planSupply({
    ...{ supplyId: supply.supplyId, units, perUnit },
    ...{ scrapPercent: SCRAP_OF[supply.kind], onHand: supply.onHandPieces },
    ...{ packPieces: supply.packPieces, packMinorUnits: supply.packMinorUnits },
  });
  return { ...line, usedPieces: units * perUnit };
}

/** Uses of one sort put together. */
function gathered(uses: readonly SupplyUse[]): SupplyUse[] {
  const byText = new Map<string, SupplyUse>();
  for (const use of uses) {
    const text = JSON.stringify([use.kind, use.kindId, use.sizeMillilitres]);
    const before = byText.get(text);
    byText.set(text, { ...use, pieces: (before?.pieces ?? 0) + use.pieces });
  }
  return [...byText.entries()].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, use]) => use);
}

/**
 * What pieces of a supply will cost at the price of a pack, for an estimate; null when nobody knows the price.
 * Units: minor units, rounded up to the next. Errors: AssertionError when a figure is not whole and ≥ 0, or a pack holds none.
 */
export function pieceCost(
  pieces: number,
  pack: Pick<KeptSupply, 'packPieces' | 'packMinorUnits'>,
): number | null {
  assertWhole(pieces, 'pieces');
  assert(pack.packPieces > 0, 'a pack holds at least one piece');
  if (pack.packMinorUnits === null) return null;
  const [count, price, each] = [BigInt(pieces), BigInt(pack.packMinorUnits), BigInt(pack.packPieces)];
  return Number((count * price + each - 1n) / each);
}
