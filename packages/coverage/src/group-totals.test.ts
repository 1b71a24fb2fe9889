import { fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groupTotals, groupTotalsTable } from './group-totals.ts';

describe('a figure over several households', () => {
  test.for([0, 1, 4])('is held back when only %i are in it', (households) => {
    expect(groupTotals(Array.from({ length: households }, () => 10))).toEqual({ isShown: false });
  });

  test('is shown over five, as a total, a mean and a median', () => {
    expect(groupTotals([10, 20, 30, 40, 51])).toEqual({
      isShown: true,
      households: 5,
      total: 151,
      mean: fraction(151, 5),
      median: fraction(30),
    });
  });

  test.for([
    { values: [400, 1, 3, 2, 5], median: fraction(3), because: 'one far household moves it not at all' },
    {
      values: [6, 1, 2, 3, 4, 9],
      median: fraction(7, 2),
      because: 'of six it lies between the two in the middle',
    },
  ])('has a median: $because', ({ values, median }) => {
    expect(groupTotals(values)).toMatchObject({ median });
  });

  test('is refused when a value is not whole', () => {
    expect(() => groupTotals([1, 2, 3, 4, 5.5])).toThrow('whole');
  });
});

describe('a table of figures beside their total', () => {
  const cell = (key: string, households: number): { key: string; values: number[] } => ({
    key,
    values: Array.from({ length: households }, () => 100),
  });
  const shown = (cells: readonly { key: string; values: number[] }[]): string[] =>
    groupTotalsTable(cells).cells.flatMap(({ key, figure }) => (figure.isShown ? key : []));

  test('holds back the next smallest cell with a lone small one, which could else be found by subtraction', () => {
    expect(shown([cell('grains', 9), cell('salt', 3), cell('fats', 6)])).toEqual(['grains']);
  });

  test('holds back no more when two small cells hide each other', () => {
    expect(shown([cell('grains', 9), cell('salt', 3), cell('fats', 4)])).toEqual(['grains']);
  });

  test('goes on when two small cells together are still too few households', () => {
    expect(shown([cell('grains', 9), cell('salt', 2), cell('fats', 2), cell('sugars', 7)])).toEqual([
      'grains',
    ]);
  });

  test('shows everything when every cell is large enough, and an empty cell hides nobody', () => {
    expect(shown([cell('grains', 9), cell('salt', 5)])).toEqual(['grains', 'salt']);
    expect(shown([cell('grains', 9), cell('salt', 0)])).toEqual(['grains']);
  });

  test('shows no total over too few households', () => {
    expect(groupTotalsTable([cell('grains', 4)]).total).toEqual({ isShown: false });
  });

  test('never lets subtraction reach fewer than five households or a single cell', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 9 }), { minLength: 1, maxLength: 6 }), (sizes) => {
        const table = groupTotalsTable(sizes.map((size, place) => cell(`cell ${place}`, size)));
        const hidden = sizes.filter((size, place) => size > 0 && !table.cells[place]?.figure.isShown);
        if (!table.total.isShown || hidden.length === 0) return;
        expect(hidden.reduce((sum, size) => sum + size, 0)).toBeGreaterThanOrEqual(5);
        expect(hidden.length).toBeGreaterThanOrEqual(2);
      }),
    );
  });

  test('refuses a key that stands twice', () => {
    expect(() => groupTotalsTable([cell('a', 5), cell('a', 5)])).toThrow('stands once');
  });
});
