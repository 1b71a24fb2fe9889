import { fillBags } from '@sheafbook/sharing';
import { loadSolver } from '@sheafbook/solve';
import { describe, expect, test } from 'vitest';
import {
  aLine,
  anOffer,
  aPledge,
  aRequest,
  type PledgeRow,
} from '../../packages/sharing/src/fill-builders.ts';
import { fillByBruteForce, listCandidates, listWays } from './fill-brute-force.ts';

const solver = await loadSolver();

// The instances and their optima were worked for the bag-fill rules of this product by trying everything in
// another program; the candidate and feasible counts say how much that was. Amounts in pounds.
const five: PledgeRow[] = [
  ['Ashdown', 20, 30, 40, 5],
  ['Birchall', 25, 45, 50, 5],
  ['Corran', 10, 20, 30, 5],
  ['Dell', 10, 15, 25, 5],
  ['Eskdale', 20, 30, 50, 5],
];
const wholeAndShared: PledgeRow[] = [
  ['Ashdown', 50, 100, 100, 50],
  ['Birchall', 25, 35, 40, 5],
  ['Corran', 20, 25, 30, 5],
  ['Dell', 30, 30, 30, 5],
  ['Eskdale', 50, 50, 100, 50],
];
const three: PledgeRow[] = [
  ['Ashdown', 30, 30, 30, 5],
  ['Birchall', 20, 25, 25, 5],
  ['Corran', 15, 15, 20, 5],
];
const four: PledgeRow[] = [
  ['A', 10, 20, 25, 5],
  ['B', 15, 15, 20, 5],
  ['C', 5, 10, 10, 5],
  ['D', 20, 20, 20, 10],
];
const instances = [
  {
    name: 'five wants of 140 lb in 50 lb bags',
    bagSize: 50,
    commonCap: 0,
    rows: five,
    candidates: 10_080,
    feasible: 1027,
    ties: 10,
    units: [30, 45, 20, 20, 35],
    bags: 3,
    spare: 0,
    key: [0, 0, 0, 10, 5],
  },
  {
    name: 'whole bags beside shared ones',
    bagSize: 50,
    commonCap: 0,
    rows: wholeAndShared,
    candidates: 360,
    feasible: 45,
    ties: 1,
    units: [100, 40, 30, 30, 50],
    bags: 5,
    spare: 0,
    key: [0, 0, 0, 10, 5],
  },
  {
    name: 'no common stock, one dropped',
    bagSize: 50,
    commonCap: 0,
    rows: three,
    candidates: 18,
    feasible: 3,
    ties: 1,
    units: [30, 20, 0],
    bags: 1,
    spare: 0,
    key: [1, 0, 0, 20, 15],
  },
  {
    name: 'common stock of 10 lb is too little to help',
    bagSize: 50,
    commonCap: 10,
    rows: three,
    candidates: 18,
    feasible: 7,
    ties: 1,
    units: [30, 20, 0],
    bags: 1,
    spare: 0,
    key: [1, 0, 0, 20, 15],
  },
  {
    name: 'common stock of 25 lb saves the third pledge',
    bagSize: 50,
    commonCap: 25,
    rows: three,
    candidates: 18,
    feasible: 11,
    ties: 1,
    units: [30, 25, 20],
    bags: 2,
    spare: 25,
    key: [0, 1, 25, 5, 5],
  },
];

describe.for(instances)('$name', { timeout: 30_000 }, (instance) => {
  const { bagSize, commonCap, rows } = instance;
  const line = aLine({ offers: [anOffer({ bagSize })], commonCap, pledges: rows.map(aPledge) });
  const request = aRequest({ lines: [line] });

  test('is filled as trying everything fills it', () => {
    const [filled] = fillBags(request, solver).lines;
    expect(filled?.allotments.map((allotment) => allotment.units)).toEqual(instance.units);
    expect(filled?.bags).toEqual([{ bagOfferId: `bag of ${bagSize}`, bags: instance.bags }]);
    expect(filled?.commonUnits).toBe(instance.spare);
    expect(filled?.key).toEqual(instance.key);
  });

  test('has as many candidates, feasible fills and ties as were counted', () => {
    const ways = listWays(line);
    expect(listCandidates(line)).toHaveLength(instance.candidates);
    expect(new Set(ways.map((way) => way.units.join())).size).toBe(instance.feasible);
    expect(ways.filter((way) => way.key.join() === instance.key.join())).toHaveLength(instance.ties);
    expect(fillByBruteForce(request)[0]?.units).toEqual(instance.units);
  });
});

test.for([
  { bagSize: 25, mostBags: null, units: [25, 20, 10, 20], bags: 3, deviation: 10 },
  { bagSize: 50, mostBags: null, units: [10, 15, 5, 20], bags: 1, deviation: 15 },
  { bagSize: 25, mostBags: 2, units: [10, 15, 5, 20], bags: 2, deviation: 15 },
])('four pledges in bags of $bagSize, at most $mostBags: $units', ({ bagSize, mostBags, ...expected }) => {
  const line = aLine({ offers: [anOffer({ bagSize })], mostBags, pledges: four.map(aPledge) });
  const [filled] = fillBags(aRequest({ lines: [line] }), solver).lines;
  expect(filled?.allotments.map((allotment) => allotment.units)).toEqual(expected.units);
  expect(filled?.bags[0]?.bags).toBe(expected.bags);
  expect(filled?.key[3]).toBe(expected.deviation);
});
