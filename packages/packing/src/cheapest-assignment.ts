import { assert } from '@sheafbook/units';

/**
 * Gives each row a column of its own, so that the sum of their costs is the least there is. A null is a pair that may not be.
 * Units: costs are of one unit, whole, and may be below zero. Shape: the column of each row, in order.
 * Ties: which of several cheapest ways is not told; costs that allow only one have none.
 * Errors: AssertionError when the rows are not alike or no way serves all of them.
 * Source: the Hungarian method by shortest augmenting paths; H. W. Kuhn, Naval Research Logistics Quarterly 2 (1955), 83–97.
 */
export function cheapestAssignment(costs: readonly (readonly (bigint | null)[])[]): number[] {
  const width = costs[0]?.length ?? 0;
  assert(
    costs.every((row) => row.length === width),
    'each row has a cost for each column',
  );
  const rowPrice = costs.map(() => 0n);
  const columnPrice = Array<bigint>(width).fill(0n);
  const rowAt = Array<number>(width).fill(-1);
  for (const start of costs.keys()) {
    // The cheapest way so far to each column, and the column that it comes from; -1 is the row that is to be placed.
    const reach = Array<bigint | null>(width).fill(null);
    const cameFrom = Array<number>(width).fill(-1);
    const isDone = Array<boolean>(width).fill(false);
    let column = -1;
    let row = start;
    do {
      if (column >= 0) isDone[column] = true;
      let step: bigint | null = null;
      let next = -1;
      for (let at = 0; at < width; at += 1) {
        if (isDone[at]) continue;
        const cost = costs[row]?.[at] ?? null;
        if (cost !== null) {
          const left = cost - (rowPrice[row] ?? 0n) - (columnPrice[at] ?? 0n);
          const before = reach[at] ?? null;
          if (before === null || left < before) {
            reach[at] = left;
            cameFrom[at] = column;
          }
        }
        const own = reach[at] ?? null;
        if (own !== null && (step === null || own < step)) {
          step = own;
          next = at;
        }
      }
      assert(step !== null, 'each row can have a column');
      rowPrice[start] = (rowPrice[start] ?? 0n) + step;
      for (let at = 0; at < width; at += 1) {
        if (isDone[at]) {
          columnPrice[at] = (columnPrice[at] ?? 0n) - step;
          const held = rowAt[at] as number;
          rowPrice[held] = (rowPrice[held] ?? 0n) + step;
        } else if (reach[at] !== null) reach[at] = (reach[at] as bigint) - step;
      }
      column = next;
      row = rowAt[column] as number;
    } while (row !== -1);
    while (column !== -1) {
      const before = cameFrom[column] as number;
      rowAt[column] = before === -1 ? start : (rowAt[before] as number);
      column = before;
    }
  }
  return costs.map((_, row) => rowAt.indexOf(row));
}
