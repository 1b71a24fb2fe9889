import { containersFor, type HasBulk, type KeepingClass } from '@sheafbook/foods';
import {
  type Barrier,
  judgeTreatment,
  type KeepingLife,
  keepingLifeOf,
  type Misfit,
  PUBLISHED_AGEING,
  TREATMENT_CODES,
  type TreatmentCode,
} from '@sheafbook/keeping';
import { assertWhole, sumOf } from '@sheafbook/units';
import { ABSORBER_SIZES, chooseAbsorbers } from './absorbers.ts';
import { airInPack } from './air-in-pack.ts';
import { dryIceGramsFor } from './dry-ice.ts';

/** The food that is to be kept. Null is unknown. Units: per cent wet basis. Errors: none. */
export type FoodToKeep = HasBulk & {
  readonly keepingClass: KeepingClass | null;
  readonly needsMoistureTest: boolean;
  readonly moisturePercent: number | null;
};

/** A kind of container that could be used. Units: microlitres, minor units of money; null is unknown. Errors: none. */
export type KindToUse = {
  readonly kindId: string;
  readonly kindCode: string;
  readonly capacityMicrolitres: number;
  readonly barrier: Barrier | null;
  readonly isDark: boolean;
  readonly priceMinorUnits: number | null;
};

/** What is used up besides containers. Units: minor units for a packet or a kilogram of ice; null is unknown. Errors: none. */
export type UsePrices = {
  /** By the size in millilitres; when any has a price, only those are chosen from. */
  readonly absorbers: ReadonlyMap<number, number>;
  readonly dryIceKilogram: number | null;
};

/** Packets of one size. Units: millilitres of oxygen, pieces. Errors: none. */
export type PacketCount = { readonly sizeMillilitres: number; readonly count: number };

/**
 * One kind of container with one treatment for the whole mass.
 * Units: pieces, whole grams, minor units; `costMinorUnits` and `costPerYearMinorUnits` null when a price is unknown, `life`
 * null when nobody has said how the food keeps. Errors: none by itself.
 */
export type WayToKeep = {
  readonly kindId: string;
  readonly treatment: TreatmentCode;
  /** What to mind, though it is allowed. */
  readonly warnings: readonly Misfit[];
  readonly containers: number;
  readonly gramsEach: number;
  readonly lastGrams: number;
  readonly packets: readonly PacketCount[];
  readonly dryIceGrams: number;
  readonly costMinorUnits: number | null;
  readonly life: KeepingLife | null;
  readonly costPerYearMinorUnits: number | null;
};

/** A combination that is not safe or does nothing, with the nearest treatment that does. Units: none. Errors: none. */
export type WayRefused = {
  readonly kindId: string;
  readonly treatment: TreatmentCode;
  readonly misfits: readonly Misfit[];
  readonly nearest: TreatmentCode | null;
};

const DAYS_PER_YEAR = 365.25;
/** They use up gas or dust that the group keeps no price of, so that nobody takes them for free. */
const UNPRICED: readonly TreatmentCode[] = ['nitrogen-flush', 'food-grade-earth'];

/**
 * Every container kind with every treatment for a mass of food: what is safe, the cheapest per year kept first, and what is
 * not, with the reason. Containers, packets and ice are paid as they are used up; one that can be used again counts whole.
 * No treatment at all is always among the ways, so that a modest choice is never blocked.
 * Units: whole grams. Shape: `ways` is null when the food's bulk density is unknown, since nobody can count containers then.
 * Ties: fitting before warned of, known cost before unknown, longer before shorter, then the order of kinds and treatments.
 * Errors: AssertionError when the grams are not whole and above zero, or as `judgeTreatment`.
 */
export function listWaysToKeep(
  grams: number,
  food: FoodToKeep,
  kinds: readonly KindToUse[],
  prices: UsePrices,
): { readonly ways: readonly WayToKeep[] | null; readonly refused: readonly WayRefused[] } {
  assertWhole(grams, 'grams');
  const refused: WayRefused[] = [];
  const ways: WayToKeep[] = [];
  let isCountable = true;
  for (const kind of kinds) {
    const count = containersFor(grams, kind, food);
    isCountable &&= count !== null;
    for (const treatment of TREATMENT_CODES) {
      const plan = {
        ...food,
        barrier: kind.barrier,
        grams: Math.min(grams, count?.perContainerGrams ?? grams),
      };
      const { verdict, misfits, nearest } = judgeTreatment(treatment, plan);
      if (verdict === 'refused') refused.push({ kindId: kind.kindId, treatment, misfits, nearest });
      else if (count) ways.push(makeWay({ kind, food, treatment, count, prices, warnings: misfits }));
    }
  }
  return { ways: isCountable ? ways.toSorted(inOrder) : null, refused };
}

type Making = {
  readonly kind: KindToUse;
  readonly food: FoodToKeep;
  readonly treatment: TreatmentCode;
  readonly count: NonNullable<ReturnType<typeof containersFor>>;
  readonly prices: UsePrices;
  readonly warnings: readonly Misfit[];
};

function makeWay(making: Making): WayToKeep {
  const { kind, food, treatment, count, prices, warnings } = making;
  const { containersForAll: containers, perContainerGrams: gramsEach, remainderGrams } = count;
  const packets = treatment === 'oxygen-absorber' ? countPackets(making) : [];
  const dryIceGrams =
    treatment === 'dry-ice' ? containers * dryIceGramsFor(kind.capacityMicrolitres / 1000) : 0;
  const costs = [
    UNPRICED.includes(treatment) ? null : 0,
    kind.priceMinorUnits === null ? null : containers * kind.priceMinorUnits,
    ...packets.map(({ sizeMillilitres, count: pieces }) =>
      timesOrNull(prices.absorbers.get(sizeMillilitres), pieces),
    ),
    dryIceGrams === 0 ? 0 : timesOrNull(prices.dryIceKilogram, dryIceGrams / 1000),
  ];
  const costMinorUnits = costs.includes(null) ? null : Math.ceil(sumOf(costs.map((cost) => cost ?? 0)));
  const life =
    food.keepingClass === null ? null : lifeOf({ ...food, keepingClass: food.keepingClass }, making);
  const likelyDays = life?.likelyDays ?? 0;
  const costPerYearMinorUnits =
    costMinorUnits === null || likelyDays === 0 ? null : (costMinorUnits * DAYS_PER_YEAR) / likelyDays;
  const lastGrams = remainderGrams === 0 ? gramsEach : remainderGrams;
  const made = {
    kindId: kind.kindId,
    treatment,
    warnings,
    containers,
    gramsEach,
    lastGrams,
    packets,
    dryIceGrams,
  };
  return { ...made, costMinorUnits, life, costPerYearMinorUnits };
}

const timesOrNull = (price: number | null | undefined, pieces: number): number | null =>
  price === null || price === undefined ? null : price * pieces;

/** As new, dark, at the reference temperature: what the pack and the food allow. */
const lifeOf = (food: FoodToKeep & { readonly keepingClass: KeepingClass }, { kind, treatment }: Making) =>
  keepingLifeOf({
    keepingClass: food.keepingClass,
    barrier: kind.barrier,
    isDark: kind.isDark,
    treatment,
    moisturePercent: food.moisturePercent,
    standsInLight: false,
    openedDaysAgo: null,
    lastLook: null,
    history: [],
    nowTenthsCelsius: PUBLISHED_AGEING.referenceTenths,
  });

/** Packets for the full containers and for the last, whose empty part is air as well. */
function countPackets({ kind, food, count, prices }: Making): PacketCount[] {
  const sizes = prices.absorbers.size > 0 ? [...prices.absorbers.keys()] : ABSORBER_SIZES;
  const totals = new Map<number, number>();
  const add = (grams: number, containers: number) => {
    const air = airInPack(grams, kind, food);
    for (const packet of (air === null ? null : chooseAbsorbers(air, sizes))?.packets ?? [])
      totals.set(
        packet.sizeMillilitres,
        (totals.get(packet.sizeMillilitres) ?? 0) + packet.count * containers,
      );
  };
  if (count.containers > 0) add(count.perContainerGrams, count.containers);
  if (count.remainderGrams > 0) add(count.remainderGrams, 1);
  return [...totals]
    .toSorted(([a], [b]) => b - a)
    .map(([sizeMillilitres, pieces]) => ({ sizeMillilitres, count: pieces }));
}

function inOrder(a: WayToKeep, b: WayToKeep): number {
  return (
    Number(a.warnings.length > 0) - Number(b.warnings.length > 0) ||
    Number(a.costPerYearMinorUnits === null) - Number(b.costPerYearMinorUnits === null) ||
    (a.costPerYearMinorUnits ?? 0) - (b.costPerYearMinorUnits ?? 0) ||
    (b.life?.likelyDays ?? 0) - (a.life?.likelyDays ?? 0)
  );
}
