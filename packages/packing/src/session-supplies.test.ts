import { expect, test } from 'vitest';
import {
  type ContainersToSupply,
  type KeptSupply,
  pieceCost,
  planSupplies,
  usesOf,
} from './session-supplies.ts';

const CANS: ContainersToSupply = {
  ...{ kindId: 'can', capacityMicrolitres: 3_108_180, keepingClass: 'whole-grain-hard' },
  ...{ treatment: 'oxygen-absorber', containers: 228, gramsEach: 2_500, bulkMilligramsPerMillilitre: 812 },
};
const kept = (wish: Partial<KeptSupply>): KeptSupply => ({
  ...{ supplyId: 'cans', kind: 'container', kindId: 'can', sizeMillilitres: null, piecesEach: 1 },
  ...{ onHandPieces: 0, packPieces: 1, packMinorUnits: null },
  ...wish,
});

test('228 cans need 235 cans, 235 lids, 38 cartons of 6, 240 absorbers and 251 labels (job map 7.2); packs are bought whole', () => {
  const shelf = [
    kept({}),
    kept({ supplyId: 'lids', kind: 'lid', packPieces: 50, onHandPieces: 36 }),
    kept({ supplyId: 'cartons', kind: 'carton', piecesEach: 6, packPieces: 25 }),
    kept({
      ...{ supplyId: 'absorbers', kind: 'absorber', kindId: null, sizeMillilitres: 300 },
      ...{ packPieces: 100, packMinorUnits: 1_250, onHandPieces: 60 },
    }),
    kept({ supplyId: 'labels', kind: 'label', kindId: null }),
    kept({ supplyId: 'gloves', kind: 'glove', kindId: null, piecesEach: 2, packPieces: 100 }),
  ];
  const { lines, unkept } = planSupplies([CANS], shelf, { people: 6 });
  expect(lines.map(({ supplyId, neededPieces }) => [supplyId, neededPieces])).toEqual([
    ['cans', 235],
    ['lids', 235],
    ['cartons', 38],
    ['absorbers', 240],
    ['labels', 251],
    ['gloves', 12],
  ]);
  expect(lines[1]).toMatchObject({ shortPieces: 199, packsToBuy: 4, costMinorUnits: null });
  expect(lines[2]).toMatchObject({ usedPieces: 38, packsToBuy: 2 });
  expect(lines[3]).toMatchObject({ shortPieces: 180, packsToBuy: 2, costMinorUnits: 2_500 });
  expect(unkept).toEqual([]);
});

test('a carton that is begun counts whole, over all whose containers go into it', () => {
  const cartons = kept({ supplyId: 'cartons', kind: 'carton', piecesEach: 6 });
  const needed = (...containers: number[]) =>
    planSupplies(
      containers.map((count) => ({ ...CANS, containers: count })),
      [cartons],
      { people: 1 },
    ).lines.map(({ neededPieces }) => neededPieces);
  expect([needed(6), needed(7), needed(3, 3), needed(3, 4)]).toEqual([[1], [2], [1], [2]]);
});

test('containers that the store keeps none of are told, and so is a treatment that it has nothing for', () => {
  const pails: ContainersToSupply = { ...CANS, kindId: 'pail', treatment: 'dry-ice', containers: 2 };
  const { lines, unkept } = planSupplies([CANS, pails], [kept({})], { people: 6 });
  expect(lines.map(({ supplyId }) => supplyId)).toEqual(['cans']);
  expect(unkept).toEqual([
    { kind: 'absorber', kindId: null, sizeMillilitres: 300, pieces: 228 },
    { kind: 'container', kindId: 'pail', sizeMillilitres: null, pieces: 2 },
    { kind: 'dry-ice', kindId: null, sizeMillilitres: null, pieces: 48 },
  ]);
});

test('an emptier can holds more air, and a food of unknown bulk counts as filling it', () => {
  const packets = (wish: Partial<ContainersToSupply>) =>
    usesOf({ ...CANS, containers: 1, ...wish }).filter(({ kind }) => kind === 'absorber');
  expect(packets({})).toMatchObject([{ sizeMillilitres: 300, pieces: 1 }]);
  expect(packets({ gramsEach: 600 }).map(({ sizeMillilitres }) => sizeMillilitres)).toEqual([1000]);
  expect(packets({ bulkMilligramsPerMillilitre: null })).toMatchObject([{ sizeMillilitres: 300, pieces: 1 }]);
  expect(packets({ treatment: 'none' })).toEqual([]);
});

test('nobody who packs nothing needs anything, and a price of a pack is a price of its pieces', () => {
  expect(planSupplies([], [kept({ kind: 'glove', kindId: null })], { people: 6 })).toEqual({
    lines: [],
    unkept: [],
  });
  expect(pieceCost(26, { packPieces: 25, packMinorUnits: 500 })).toBe(520);
  expect(pieceCost(1, { packPieces: 3, packMinorUnits: 100 })).toBe(34);
  expect(pieceCost(1, { packPieces: 3, packMinorUnits: null })).toBeNull();
});
