import {
  assert,
  assertWhole,
  compareFractions,
  type Fraction,
  fraction,
  fractionToNumber,
  multiplyFractions,
  sumOf,
} from '@sheafbook/units';

/**
 * One step of a packing line. `stays-alone` is a machine with one operator, which can't be merged with its neighbours
 * nor sped up by a second person.
 * Units: seconds a container, whole. Errors: none by itself.
 */
export type Station = {
  readonly name: string;
  readonly secondsPerUnit: number;
  readonly staysAlone: boolean;
};

/**
 * The stations of a can line with their usual times, which a group replaces by its own.
 * Units: seconds a can. Errors: none. Source: common practice, no source.
 */
export const CAN_LINE: readonly Station[] = [
  { name: 'fill', secondsPerUnit: 30, staysAlone: false },
  { name: 'weigh', secondsPerUnit: 18, staysAlone: false },
  { name: 'absorber', secondsPerUnit: 6, staysAlone: false },
  { name: 'seam', secondsPerUnit: 24, staysAlone: true },
  { name: 'label', secondsPerUnit: 20, staysAlone: false },
  { name: 'box', secondsPerUnit: 10, staysAlone: false },
];

/** Neighbouring stations that some people work together. Units: seconds a container as a fraction. Errors: none. */
export type Block = {
  readonly stations: readonly string[];
  readonly people: number;
  readonly cycleSeconds: Fraction;
};

/** How a crew stands, and what holds it up. Units: seconds a container, people. Errors: none by itself. */
export type LineCrew = {
  readonly blocks: readonly Block[];
  readonly cycleSeconds: Fraction;
  readonly bottleneck: Block;
  readonly idlePeople: number;
};

/**
 * The grouping of a line's stations over a crew with the shortest cycle; then with the fewest people that reach it (whoever
 * is left over is of more use elsewhere), then fewer blocks, then people toward the front. Every grouping is tried: a line
 * has few stations.
 * Units: people, seconds. Shape: null when there are fewer people than blocks that can't be merged.
 * Errors: AssertionError when a station takes no time or the crew is not whole.
 */
export function placeCrew(stations: readonly Station[], people: number): LineCrew | null {
  assertWhole(people, 'people');
  assert(stations.length > 0, 'a line has stations');
  for (const { secondsPerUnit } of stations) assert(secondsPerUnit > 0, 'a station takes time');
  let best: LineCrew | null = null;
  for (const groups of groupings(stations)) {
    for (const crew of crewings(groups, people)) {
      const placed = describe(groups, crew, people);
      if (!best || isBetter(placed, best)) best = placed;
    }
  }
  return best;
}

/**
 * What one more person would buy: the cycle before and after.
 * Units: seconds a container; null where the line can't run with that crew. Errors: as `placeCrew`.
 */
export function onePersonMore(
  stations: readonly Station[],
  people: number,
): { readonly nowSeconds: Fraction | null; readonly thenSeconds: Fraction | null } {
  return {
    nowSeconds: placeCrew(stations, people)?.cycleSeconds ?? null,
    thenSeconds: placeCrew(stations, people + 1)?.cycleSeconds ?? null,
  };
}

/**
 * The line's cycle with one person more at a station, everybody else staying where they stand. A machine that stays alone gains
 * nothing by a second person.
 * Units: seconds a container. Errors: AssertionError when no block has the station.
 */
export function cycleWithOneMoreAt(
  { blocks }: Pick<LineCrew, 'blocks'>,
  stations: readonly Station[],
  station: string,
): Fraction {
  const isAlone = stations.some(({ name, staysAlone }) => name === station && staysAlone);
  assert(
    blocks.some((block) => block.stations.includes(station)),
    'the station is one of the line',
  );
  const cycles = blocks.map(({ stations: names, people, cycleSeconds }) =>
    names.includes(station) && !isAlone
      ? multiplyFractions(cycleSeconds, fraction(people, people + 1))
      : cycleSeconds,
  );
  return cycles.reduce((worst, cycle) => (compareFractions(cycle, worst) > 0 ? cycle : worst));
}

/** All ways to cut the line into neighbouring groups; a machine that stays alone is a group of its own. */
function groupings(stations: readonly Station[]): (readonly Station[])[][] {
  const [first, ...rest] = stations;
  if (!first) return [[]];
  return groupings(rest).flatMap((groups) => {
    const apart = [[first], ...groups];
    const [next, ...others] = groups;
    const mayJoin = next && !first.staysAlone && next.every(({ staysAlone }) => !staysAlone);
    return mayJoin ? [apart, [[first, ...next], ...others]] : [apart];
  });
}

/** All ways to give the groups people, at least one each and one only where a machine stays alone. */
function crewings(groups: readonly (readonly Station[])[], people: number): number[][] {
  const [first, ...rest] = groups;
  if (!first) return [[]];
  const most = first.some(({ staysAlone }) => staysAlone) ? 1 : people - rest.length;
  const ways: number[][] = [];
  for (let here = Math.max(most, 0); here >= 1; here -= 1) {
    if (people - here < rest.length) continue;
    for (const others of crewings(rest, people - here)) ways.push([here, ...others]);
  }
  return ways;
}

function describe(
  groups: readonly (readonly Station[])[],
  crew: readonly number[],
  people: number,
): LineCrew {
  const blocks = groups.map((group, position) => {
    const seconds = workContentSeconds(group);
    const here = crew[position] ?? 1;
    return { stations: group.map(({ name }) => name), people: here, cycleSeconds: fraction(seconds, here) };
  });
  const [first, ...others] = blocks;
  assert(first, 'a line has at least one block');
  const bottleneck = others.reduce(
    (worst, block) => (compareFractions(block.cycleSeconds, worst.cycleSeconds) > 0 ? block : worst),
    first,
  );
  const used = sumOf(crew);
  return { blocks, cycleSeconds: bottleneck.cycleSeconds, bottleneck, idlePeople: people - used };
}

function isBetter(a: LineCrew, b: LineCrew): boolean {
  const cycle = compareFractions(a.cycleSeconds, b.cycleSeconds);
  if (cycle !== 0) return cycle < 0;
  if (a.idlePeople !== b.idlePeople) return a.idlePeople > b.idlePeople;
  if (a.blocks.length !== b.blocks.length) return a.blocks.length < b.blocks.length;
  for (const [position, block] of a.blocks.entries()) {
    const other = b.blocks[position]?.people ?? 0;
    if (block.people !== other) return block.people > other;
  }
  return false;
}

/** Containers an hour, to one decimal. Units: seconds a container in. Errors: AssertionError when a cycle takes no time. */
export function unitsPerHour(cycleSeconds: Fraction): number {
  assert(cycleSeconds.numerator > 0n, 'a cycle takes time');
  return Math.round((3600 / fractionToNumber(cycleSeconds)) * 10) / 10;
}

/**
 * Containers an hour as they were really poured, from the first to the last; null while no time lies between them.
 * Units: milliseconds in, whole containers an hour out. Errors: none.
 */
export function pouredPerHour(pouredAtMs: readonly number[]): number | null {
  const spanMs = Math.max(...pouredAtMs) - Math.min(...pouredAtMs);
  return spanMs > 0 ? Math.round(((pouredAtMs.length - 1) * 3_600_000) / spanMs) : null;
}

/** The work that one container is, all stations together. Units: seconds. Errors: none. */
export function workContentSeconds(stations: readonly Station[]): number {
  return sumOf(stations.map(({ secondsPerUnit }) => secondsPerUnit));
}
