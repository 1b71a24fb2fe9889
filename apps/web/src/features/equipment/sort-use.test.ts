import { expect, test } from 'vitest';
import { sortUse, USE_ORDERS } from './sort-use.ts';

const item = (
  itemName: string,
  used: number | null,
  late: number | null,
  cost: number | null,
  without: number,
) => ({
  ...{ itemName, usedTenthsPercent: used, lateTenthsPercent: late, costPerUseMinorUnits: cost },
  waited: { served: 0, waiting: 0, without },
});
const ITEMS = [
  item('Scale', 20, null, null, 0),
  item('Mill', 400, 100, 250, 3),
  item('Sealer', 400, 500, -20, 1),
];

test('things stand by name, or by a figure with the largest first and what has none last', () => {
  const orders = USE_ORDERS.map((order) => [order, sortUse(ITEMS, order).map(({ itemName }) => itemName)]);
  expect(Object.fromEntries(orders)).toEqual({
    name: ['Mill', 'Scale', 'Sealer'],
    used: ['Mill', 'Sealer', 'Scale'],
    late: ['Sealer', 'Mill', 'Scale'],
    cost: ['Mill', 'Sealer', 'Scale'],
    without: ['Mill', 'Sealer', 'Scale'],
  });
});
