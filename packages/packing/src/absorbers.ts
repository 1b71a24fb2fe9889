import { assert, assertWhole, sumOf } from '@sheafbook/units';
import { absorberNeed, residualOxygen } from './oxygen.ts';

/** The sizes that packets are sold in. Units: millilitres of oxygen ("cc"). Errors: none. Source: common practice, no source. */
export const ABSORBER_SIZES = [20, 50, 100, 200, 300, 500, 1000, 2000] as const;

/**
 * Packets for one container, largest first.
 * Units: `sizeMillilitres` of oxygen a packet, `residualFraction` by volume. Errors: none by itself.
 */
export type AbsorberChoice = {
  readonly packets: readonly { readonly sizeMillilitres: number; readonly count: number }[];
  readonly ratedMillilitres: number;
  readonly needMillilitres: number;
  readonly residualFraction: number;
};

/**
 * The fewest packets of the sizes at hand that take up what is needed; among those the least rated capacity, since it
 * costs least. A packet too much is safe, one too little is not.
 * Units: millilitres. Shape: packets from large to small; null when no size is at hand.
 * Errors: AssertionError when a size is not whole and above zero, or the air is not above zero.
 */
export function chooseAbsorbers(
  airMillilitres: number,
  sizes: readonly number[] = ABSORBER_SIZES,
): AbsorberChoice | null {
  assert(airMillilitres > 0, 'there is air to take the oxygen from');
  for (const size of sizes) {
    assertWhole(size, 'size');
    assert(size > 0, 'a packet takes up something');
  }
  const descending = [...new Set(sizes)].toSorted((a, b) => b - a);
  const [largest] = descending;
  if (largest === undefined) return null;
  const needMillilitres = absorberNeed(airMillilitres);
  const best = fewestPackets(Math.ceil(needMillilitres), descending);
  const ratedMillilitres = sumOf(best);
  const packets = descending.flatMap((sizeMillilitres) => {
    const count = best.filter((size) => size === sizeMillilitres).length;
    return count > 0 ? [{ sizeMillilitres, count }] : [];
  });
  const residualFraction = residualOxygen(airMillilitres, ratedMillilitres);
  return { packets, ratedMillilitres, needMillilitres, residualFraction };
}

/** All but the last packet are of the largest size or the count would not be least; the last ones are tried. */
function fewestPackets(needMillilitres: number, descending: readonly number[]): number[] {
  const [largest = 0] = descending;
  const count = Math.ceil(needMillilitres / largest);
  const best = leastRated(needMillilitres, descending, count);
  assert(best !== null, 'that many of the largest packets are enough');
  return best;
}

/** Of `count` packets the combination with the least rating that is enough, or null. */
function leastRated(needMillilitres: number, descending: readonly number[], count: number): number[] | null {
  if (count === 0) return needMillilitres <= 0 ? [] : null;
  const [largest = 0] = descending;
  let best: number[] | null = null;
  for (const [position, size] of descending.entries()) {
    if (size + largest * (count - 1) < needMillilitres) continue;
    const rest = leastRated(needMillilitres - size, descending.slice(position), count - 1);
    if (!rest) continue;
    const candidate = [size, ...rest];
    if (!best || sumOf(candidate) < sumOf(best)) best = candidate;
  }
  return best;
}

/**
 * Whether packets that somebody means to put in are enough, with the published rule of thumb beside the sum.
 * Units: millilitres of oxygen; fraction by volume. Errors: as `residualOxygen`.
 */
export function judgeAbsorbers(
  airMillilitres: number,
  ratedMillilitres: number,
): {
  readonly isEnough: boolean;
  readonly needMillilitres: number;
  readonly residualFraction: number;
} {
  const needMillilitres = absorberNeed(airMillilitres);
  const residualFraction = residualOxygen(airMillilitres, ratedMillilitres);
  return { isEnough: ratedMillilitres >= needMillilitres, needMillilitres, residualFraction };
}

/**
 * The published rule of thumb for a container of this size, to be shown beside the computed need.
 * Units: millilitres of container in, millilitres of oxygen out; null where the rule says nothing.
 * Errors: none. Source: Utah State University Extension, food storage booklet, p. 95: 100 cc for pints and quarts, 300 cc
 * for gallons, 500 cc for 5-gallon pails (the last two fall short of 1 % by the gas law).
 */
export function ruleOfThumbAbsorber(packMillilitres: number): number | null {
  const rules = [
    { uptoMillilitres: 946.36, sizeMillilitres: 100 },
    { uptoMillilitres: 3785.42, sizeMillilitres: 300 },
    { uptoMillilitres: 18_927.07, sizeMillilitres: 500 },
  ];
  return rules.find(({ uptoMillilitres }) => packMillilitres <= uptoMillilitres)?.sizeMillilitres ?? null;
}
