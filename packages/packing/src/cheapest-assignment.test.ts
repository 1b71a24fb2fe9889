import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cheapestAssignment } from './cheapest-assignment.ts';

const sumOfWay = (costs: readonly (readonly (bigint | null)[])[], way: readonly number[]) =>
  way.reduce<bigint | null>((sum, column, row) => {
    const cost = costs[row]?.[column] ?? null;
    return sum === null || cost === null ? null : sum + cost;
  }, 0n);

const everyWay = (rows: number, columns: readonly number[]): number[][] =>
  rows === 0
    ? [[]]
    : columns.flatMap((column) =>
        everyWay(
          rows - 1,
          columns.filter((other) => other !== column),
        ).map((way) => [column, ...way]),
      );

test('no other way costs less, whatever may not be', () => {
  const cost = fc.option(fc.integer({ min: -20, max: 20 }).map(BigInt), { freq: 4 });
  const table = fc
    .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 2 }))
    .chain(([rows, more]) =>
      fc.array(fc.array(cost, { minLength: rows + more, maxLength: rows + more }), {
        minLength: rows,
        maxLength: rows,
      }),
    );
  fc.assert(
    fc.property(table, (costs) => {
      const columns = [...(costs[0]?.keys() ?? [])];
      const sums = everyWay(costs.length, columns).flatMap((way) => sumOfWay(costs, way) ?? []);
      if (sums.length === 0) expect(() => cheapestAssignment(costs)).toThrow('each row can have a column');
      else {
        const way = cheapestAssignment(costs);
        expect(new Set(way).size).toBe(costs.length);
        expect(sumOfWay(costs, way)).toBe(sums.toSorted((a, b) => Number(a - b))[0]);
      }
    }),
  );
});

test('nobody to place is no way at all', () => {
  expect(cheapestAssignment([])).toEqual([]);
});
