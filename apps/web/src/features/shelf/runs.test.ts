import { expect, test } from 'vitest';
import type { Kind, Shelved } from './queries.ts';
import { planksOf, runsOf, sizeOf } from './runs.ts';

const CAN = 3_108_180;
const kinds = [{ kindCode: 'can-no-10', capacityMicrolitres: CAN }] as unknown as Kind[];
const cans = (count: number, grams = 2400, facts: object = {}): Shelved[] =>
  Array.from({ length: count }, (_, at) => ({
    id: `can ${at}`,
    grams,
    kind: { code: 'can-no-10' },
    food: { code: 'lentils' },
    place: null,
    ...facts,
  })) as unknown as Shelved[];

test('a No. 10 can is drawn about as wide as one is', () => {
  // 603 means 6 3/16 inches over the seams, 157 mm; at 0.138 px a millimetre that is 21.7 px.
  expect(sizeOf('can', CAN).width).toBeCloseTo(21, 0);
});

test('a run is cut where a plank ends, and no can is drawn twice or left out', () => {
  const runs = runsOf(cans(80), kinds);
  expect(runs.length).toBe(3); // 12 beside each other, three high: 36 a plank
  expect(runs.map((run) => run.containers.length)).toEqual([36, 36, 8]);
  expect(new Set(runs.flatMap((run) => run.containers.map(({ id }) => id))).size).toBe(80);
});

test('empty containers do not stand on the shelf', () => {
  expect(runsOf(cans(3, 0), kinds)).toEqual([]);
});

test('each place is a plank of its own by name, what stands nowhere known comes last, and lots stand apart', () => {
  const [cellar, attic] = [
    { id: 'c', name: 'Cellar' },
    { id: 'a', name: 'Attic' },
  ];
  const planks = planksOf(
    [
      ...cans(1),
      ...cans(2, 2400, { place: cellar, lotId: 'first' }),
      ...cans(1, 2400, { place: cellar, lotId: 'second' }),
      ...cans(4, 2400, { place: attic }),
      ...cans(1, 0, { place: { id: 'e', name: 'Empty' } }),
    ],
    kinds,
  );
  const counts = planks.map(({ place, runs }) => [place?.name, runs.map(({ count }) => count)]);
  expect(counts).toEqual([
    ['Attic', [4]],
    ['Cellar', [2, 1]],
    [undefined, [1]],
  ]);
});
