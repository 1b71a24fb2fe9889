import { expect, test } from 'vitest';
import type { Thing, Way } from './queries.ts';
import { drawWay, stopsOf } from './way-layout.ts';

const vessel = (id: string, isHeld = false): Thing['vessel'] => ({
  ...{ id, code: id, bagNo: null, kindOf: null, packedOn: null, session: null, isHeld },
});
const thing = (
  key: string,
  kind: Thing['kind'],
  ownerName: string | null,
  more: Partial<Thing> = {},
): Thing => ({
  ...{
    key,
    kind,
    lotId: 'K-77',
    pantry: '',
    vessel: null,
    isStart: false,
    isOwn: false,
    ownerName,
    left: [],
  },
  owner: ownerName === null ? 'unassigned' : 'household',
  ...more,
});
const left = (ownerName: string, grams: number) => [{ owner: 'household', ownerName, isOwn: false, grams }];

// Job map 12: two bags of 22,680 g; 8 cans of 2,600 g from the one, 4 given away and 6,200 g eaten from the other.
const ashdown = Array.from({ length: 8 }, (_, at) => `a${at}`);
const birchall = Array.from({ length: 4 }, (_, at) => `b${at}`);
const K_77: Pick<Way, 'things' | 'flows'> = {
  things: [
    thing('mill', 'supplier', null),
    thing('bag 2', 'bag', null, { owner: 'bag', vessel: vessel('2', true), left: left('Ashdown', 1_880) }),
    thing('bag 3', 'bag', null, { owner: 'bag', vessel: vessel('3'), left: left('Birchall', 6_080) }),
    ...ashdown.map((key) =>
      thing(key, 'container', 'Ashdown', { vessel: vessel(key, true), left: left('Ashdown', 2_600) }),
    ),
    ...birchall.map((key) => thing(key, 'container', 'Birchall', { vessel: vessel(key) })),
    thing('given', 'given', 'Birchall', { pantry: 'Mill Lane' }),
    thing('eaten', 'eaten', 'Birchall'),
  ],
  flows: [
    { from: 'mill', to: 'bag 2', grams: 22_680 },
    { from: 'mill', to: 'bag 3', grams: 22_680 },
    ...ashdown.map((to) => ({ from: 'bag 2', to, grams: 2_600 })),
    ...birchall.map((to) => ({ from: 'bag 3', to, grams: 2_600 })),
    ...birchall.map((from) => ({ from, to: 'given', grams: 2_600 })),
    { from: 'bag 3', to: 'eaten', grams: 6_200 },
  ],
};

test('containers of one owner stand together, what lies somewhere goes on to the last column', () => {
  const { stops } = stopsOf(K_77);
  expect(
    stops.map(({ column, kind, ownerName, things, grams }) => [
      column,
      kind,
      ownerName,
      things.length,
      grams,
    ]),
  ).toEqual([
    ['from', 'supplier', null, 1, 45_360],
    ['bags', 'bag', null, 1, 22_680],
    ['bags', 'bag', null, 1, 22_680],
    ['containers', 'container', 'Ashdown', 8, 20_800],
    ['containers', 'container', 'Birchall', 4, 10_400],
    ['now', 'given', 'Birchall', 1, 10_400],
    ['now', 'eaten', 'Birchall', 1, 6_200],
    ['now', 'left-bag', 'Ashdown', 1, 1_880],
    ['now', 'left-bag', 'Birchall', 1, 6_080],
    ['now', 'left-container', 'Ashdown', 8, 20_800],
  ]);
});

test('whatever comes to a stop leaves it again, and what is on hold is known by it', () => {
  const { stops, bands } = stopsOf(K_77);
  const sum = (end: 'from' | 'to', key: string) =>
    bands.filter((band) => band[end] === key).reduce((grams, band) => grams + band.grams, 0);
  for (const { key, column } of stops)
    if (column !== 'from' && column !== 'now') expect([key, sum('from', key)]).toEqual([key, sum('to', key)]);
  expect(stops.filter(({ isHeld }) => isHeld).map(({ kind, ownerName }) => `${kind} ${ownerName}`)).toEqual([
    ...['bag null', 'container Ashdown', 'left-bag Ashdown', 'left-container Ashdown'],
  ]);
});

test('each stop is as tall as its grams on one scale, and no two of a column overlap', () => {
  const { blocks, columns } = drawWay(stopsOf(K_77));
  expect(columns.map(({ column }) => column)).toEqual(['from', 'bags', 'containers', 'now']);
  for (const { stop, height } of blocks) expect(height).toBeCloseTo((stop.grams * 300) / 45_360, 6);
  for (const { x } of columns) {
    const tops = blocks.filter((block) => block.x === x).toSorted((a, b) => a.y - b.y);
    for (const [at, { y }] of tops.entries())
      if (at > 0) expect(y).toBeGreaterThanOrEqual((tops[at - 1]?.y ?? 0) + (tops[at - 1]?.height ?? 0));
  }
});

test('one’s own part begins with what a split gave, though the supplier is not shown', () => {
  const own = {
    things: [thing('bag 3', 'bag', null, { owner: 'bag', vessel: vessel('3'), left: left('Birchall', 500) })],
    flows: [],
  };
  expect(stopsOf(own).bands).toEqual([
    { from: 'bag 3', to: expect.stringContaining('left-bag'), grams: 500 },
    { from: 'share K-77', to: 'bag 3', grams: 500 },
  ]);
});
