import type { Thing, Way } from './queries.ts';

/** Columns from left to right: where it came from, bags, containers, kitchens, and where it is now. */
export const COLUMNS = ['from', 'bags', 'containers', 'kitchens', 'now'] as const;
export type Column = (typeof COLUMNS)[number];

/** Something that stands in a column: a bag, all containers of one owner and lot, or an end. */
export type Stop = {
  readonly key: string;
  readonly column: Column;
  /** A vessel's kind, an end such as eaten, `share` for what a split gave, or `left-bag` and the like for what lies there. */
  readonly kind: string;
  readonly owner: string;
  readonly ownerName: string | null;
  readonly isOwn: boolean;
  readonly pantry: string;
  readonly lotId: string;
  readonly things: readonly Thing[];
  readonly isHeld: boolean;
  readonly grams: number;
};

/** A band from stop to stop; between columns that it only passes it has a place there too. */
export type Band = { readonly from: string; readonly to: string; readonly grams: number };
export type Stops = { readonly stops: readonly Stop[]; readonly bands: readonly Band[] };

const COLUMN_OF: Readonly<Record<string, Column>> = {
  ...{ supplier: 'from', share: 'from', bag: 'bags', container: 'containers', kitchen: 'kitchens' },
};
const columnOf = (kind: string): Column => COLUMN_OF[kind] ?? 'now';

/** More bags than these stand together by their lot, or none of them could be told from the next. */
const MOST_BAGS = 24;

/**
 * Puts the things of a way together to stops and its flows to bands. What lies in a vessel goes on to the last column, and
 * what came from nowhere that is shown comes from the first, so that whatever comes to a stop leaves it again.
 */
export function stopsOf({ things, flows }: Pick<Way, 'things' | 'flows'>): Stops {
  const isCrowded = things.filter(({ kind }) => kind === 'bag').length > MOST_BAGS;
  const stops = new Map<string, Stop>();
  const bands = new Map<string, Band>();
  const stopOf = new Map<string, string>();
  const add = (stop: Omit<Stop, 'grams'>) => {
    const known = stops.get(stop.key);
    const more = known
      ? { things: [...known.things, ...stop.things], isHeld: known.isHeld || stop.isHeld }
      : {};
    stops.set(stop.key, { ...stop, ...more, grams: 0 });
  };
  const join = (from: string, to: string, grams: number) => {
    if (from === to || grams <= 0) return;
    const key = JSON.stringify([from, to]);
    bands.set(key, { from, to, grams: (bands.get(key)?.grams ?? 0) + grams });
  };
  for (const thing of things) {
    const key = groupOf(thing, isCrowded);
    stopOf.set(thing.key, key);
    add({ ...stopFacts(thing), key, column: columnOf(thing.kind), kind: thing.kind, things: [thing] });
  }
  for (const { from, to, grams } of flows) join(stopOf.get(from) ?? from, stopOf.get(to) ?? to, grams);
  for (const thing of things)
    for (const { grams, ...owner } of thing.left) {
      const kind = `left-${thing.kind}`;
      const key = `${kind} ${owner.owner} ${owner.ownerName} ${thing.vessel?.isHeld ?? false}`;
      const { lotId } = thing;
      const isHeld = thing.vessel?.isHeld ?? false;
      add({ ...owner, key, kind, column: 'now', pantry: '', lotId, isHeld, things: [thing] });
      join(stopOf.get(thing.key) ?? thing.key, key, grams);
    }
  for (const stop of [...stops.values()]) {
    const missing = sumOf(bands, 'from', stop.key) - sumOf(bands, 'to', stop.key);
    if (missing <= 0 || stop.column === 'from') continue;
    const key = `share ${stop.lotId}`;
    const owner = { owner: 'unassigned', ownerName: null, isOwn: false, pantry: '', isHeld: false };
    add({ ...owner, key, column: 'from', kind: 'share', lotId: stop.lotId, things: [] });
    join(key, stop.key, missing);
  }
  const list = [...bands.values()];
  return {
    stops: [...stops.values()].map((stop) => ({
      ...stop,
      grams: Math.max(sumOf(bands, 'from', stop.key), sumOf(bands, 'to', stop.key)),
    })),
    bands: list,
  };
}

const sumOf = (bands: ReadonlyMap<string, Band>, end: 'from' | 'to', key: string): number =>
  [...bands.values()].filter((band) => band[end] === key).reduce((sum, { grams }) => sum + grams, 0);

function groupOf(thing: Thing, isCrowded: boolean): string {
  const { kind, key, lotId, owner, ownerName } = thing;
  if (kind === 'container') return `container ${owner} ${ownerName} ${lotId}`;
  return kind === 'bag' && isCrowded ? `bag ${lotId}` : key;
}

const stopFacts = ({ owner, ownerName, isOwn, pantry, lotId, vessel }: Thing) => ({
  ...{ owner, ownerName, isOwn, pantry, lotId, isHeld: vessel?.isHeld ?? false },
});

export type Block = { readonly stop: Stop; readonly x: number; readonly y: number; readonly height: number };
export type Ribbon = { readonly key: string; readonly path: string; readonly isHeld: boolean };
export type Drawing = {
  readonly width: number;
  readonly height: number;
  readonly columns: readonly { readonly column: Column; readonly x: number }[];
  readonly blocks: readonly Block[];
  readonly ribbons: readonly Ribbon[];
};

const WIDTH = 340;
const TALL = 300;
const BAR = 22;
const GAP = 8;
const LEAST = 3;

type Place = { readonly stop: Stop | null; readonly grams: number };

/** One scale of grams for the whole picture; every column comes to the same grams, in stops and in what passes by. */
export function drawWay(way: Stops): Drawing {
  const columns = COLUMNS.filter((column) => way.stops.some((stop) => stop.column === column));
  const rankOf = (key: string) => {
    const stop = way.stops.find((one) => one.key === key);
    return stop ? columns.indexOf(stop.column) : 0;
  };
  const legs = way.bands.flatMap((band) => legsOf(band, rankOf(band.from), rankOf(band.to)));
  const places = columns.map((_, rank) => placesIn(way, legs, rank, rankOf));
  const total = Math.max(
    1,
    ...places.map((list) => [...list.values()].reduce((sum, { grams }) => sum + grams, 0)),
  );
  const heightOf = (grams: number) => Math.max(LEAST, (grams * TALL) / total);
  const xOf = (rank: number) => (columns.length < 2 ? 0 : (rank * (WIDTH - BAR)) / (columns.length - 1));
  const tops = places.map((list) => topsOf(list, heightOf));
  const height = Math.max(...tops.map(({ end }) => end), TALL);
  const cursors = new Map<string, number>();
  const ribbons = legs.map((leg): Ribbon => {
    const h = heightOf(leg.grams);
    const take = (side: string, rank: number, key: string) => {
      const at = `${side} ${rank} ${key}`;
      const y = cursors.get(at) ?? tops[rank]?.top.get(key) ?? 0;
      cursors.set(at, y + h);
      return y;
    };
    const [y0, y1] = [take('out', leg.rank, leg.from), take('in', leg.rank + 1, leg.to)];
    const isPassing = (key: string) => key.startsWith('passing ');
    const x0 = xOf(leg.rank) + BAR;
    const x1 = xOf(leg.rank + 1) + (isPassing(leg.to) ? BAR : 0);
    const mid = (x0 + x1) / 2;
    const path = `M${x0} ${y0}C${mid} ${y0} ${mid} ${y1} ${x1} ${y1}V${y1 + h}C${mid} ${y1 + h} ${mid} ${y0 + h} ${x0} ${y0 + h}Z`;
    return { key: leg.key, path, isHeld: way.stops.some(({ key, isHeld }) => key === leg.to && isHeld) };
  });
  const blocks = places.flatMap((list, rank) =>
    [...list].flatMap(([key, { stop, grams }]) =>
      stop ? [{ stop, x: xOf(rank), y: tops[rank]?.top.get(key) ?? 0, height: heightOf(grams) }] : [],
    ),
  );
  return {
    ...{ width: WIDTH, height, blocks, ribbons },
    columns: columns.map((column, rank) => ({ column, x: xOf(rank) })),
  };
}

type Leg = {
  readonly key: string;
  readonly from: string;
  readonly to: string;
  readonly rank: number;
  readonly grams: number;
};

/** A band cut at each column that it passes. Bands within a column or backwards are in the list and the table alone. */
function legsOf({ from, to, grams }: Band, first: number, last: number): Leg[] {
  const at = (rank: number) => {
    if (rank === first) return from;
    return rank === last ? to : `passing ${from} ${to} ${rank}`;
  };
  return Array.from({ length: Math.max(0, last - first) }, (_, step) => ({
    ...{ key: `${from} ${to} ${step}`, grams, rank: first + step },
    ...{ from: at(first + step), to: at(first + step + 1) },
  }));
}

/** What stands in a column or passes it, in the order of what it comes from, so that bands cross as little as they can. */
function placesIn(
  way: Stops,
  legs: readonly Leg[],
  rank: number,
  rankOf: (key: string) => number,
): Map<string, Place> {
  const list = new Map<string, Place>();
  const into = legs.filter((leg) => leg.rank === rank - 1);
  const order = rank === 0 ? [] : [...placesIn(way, legs, rank - 1, rankOf).keys()];
  for (const leg of into.toSorted((a, b) => order.indexOf(a.from) - order.indexOf(b.from))) {
    const stop = way.stops.find(({ key }) => key === leg.to) ?? null;
    list.set(leg.to, { stop, grams: stop?.grams ?? leg.grams });
  }
  for (const stop of way.stops)
    if (rankOf(stop.key) === rank && !list.has(stop.key)) list.set(stop.key, { stop, grams: stop.grams });
  return list;
}

function topsOf(list: ReadonlyMap<string, Place>, heightOf: (grams: number) => number) {
  const top = new Map<string, number>();
  let y = 0;
  for (const [key, { grams }] of list) {
    top.set(key, y);
    y += heightOf(grams) + GAP;
  }
  return { top, end: y };
}
