import { addFractions, type Fraction, fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { daysCovered } from './days-covered.ts';
import type { DaysCoveredInput } from './edible-stock.ts';
import { smaller } from './sums.ts';

// A second opinion on stocks too large for the formula over all sets: the network as the job describes it, lots to
// (eater, piece of time), filled by plain augmenting paths. Slow and unlike the code under test, which hops over diets.

type Network = Map<string, Map<string, bigint>>;

function join(network: Network, from: string, to: string, amount: bigint): void {
  const arcs = network.get(from) ?? new Map<string, bigint>();
  network.set(from, arcs.set(to, (arcs.get(to) ?? 0n) + amount));
}

/** Everything times the denominator of `days`, so that it stays whole. Rates and amounts are whole in these tests. */
function networkUntil(
  { rates, lots }: DaysCoveredInput,
  days: Fraction,
): { network: Network; wanted: bigint } {
  const scale = days.denominator;
  const lastDays = lots.flatMap(({ daysLeft }) => (daysLeft === null ? [] : BigInt(daysLeft) * scale));
  const marks = [...new Set([...lastDays.filter((day) => day < days.numerator), days.numerator])];
  marks.sort((a, b) => (a < b ? -1 : 1));
  const network: Network = new Map();
  for (const { lotId, amount } of lots)
    if (typeof amount === 'bigint') join(network, 'store', lotId, amount * scale);
  for (const { eaterId, perDay } of rates) {
    marks.forEach((mark, piece) => {
      const start = marks[piece - 1] ?? 0n;
      join(network, `${eaterId} ${piece}`, 'fed', perDay.numerator * (mark - start));
      const inTime = lots.filter((lot) => lot.daysLeft === null || BigInt(lot.daysLeft) * scale >= mark);
      for (const lot of inTime.filter(({ eaterIds }) => eaterIds.includes(eaterId))) {
        join(network, lot.lotId, `${eaterId} ${piece}`, 1n << 80n);
      }
    });
  }
  return { network, wanted: rates.reduce((sum, { perDay }) => sum + perDay.numerator * days.numerator, 0n) };
}

function pathToFed(network: Network): string[] | undefined {
  const cameFrom = new Map<string, string>([['store', '']]);
  for (const [node] of cameFrom) {
    for (const [next, room] of network.get(node) ?? []) {
      if (room > 0n && !cameFrom.has(next)) cameFrom.set(next, node);
    }
  }
  if (!cameFrom.has('fed')) return undefined;
  const path = ['fed'];
  while (path[0] !== 'store') path.unshift(cameFrom.get(path[0] ?? '') ?? 'store');
  return path;
}

function canFeedUntil(input: DaysCoveredInput, days: Fraction): boolean {
  const { network, wanted } = networkUntil(input, days);
  let fed = 0n;
  for (let path = pathToFed(network); path; path = pathToFed(network)) {
    const arcs = path.slice(1).map((to, place): [string, string] => [path[place] ?? '', to]);
    const rooms = arcs.map(([from, to]) => network.get(from)?.get(to) ?? 0n);
    const amount = rooms.reduce(smaller);
    for (const [from, to] of arcs) {
      join(network, from, to, -amount);
      join(network, to, from, amount);
    }
    fed += amount;
  }
  return fed === wanted;
}

const EATERS = ['Ana', 'Ben', 'Cy', 'Dee', 'Eli', 'Fay'] as const;
const aLargerStock: fc.Arbitrary<DaysCoveredInput> = fc.record({
  rates: fc.tuple(
    ...EATERS.map((eaterId) =>
      fc.integer({ min: 1, max: 30 }).map((perDay) => ({ eaterId, perDay: fraction(perDay) })),
    ),
  ),
  lots: fc
    .array(
      fc.record({
        amount: fc.integer({ min: 20, max: 900 }).map(BigInt),
        daysLeft: fc.oneof(
          { weight: 1, arbitrary: fc.constant(null) },
          { weight: 5, arbitrary: fc.integer({ min: 1, max: 60 }) },
        ),
        eaterIds: fc.subarray([...EATERS], { minLength: 1 }),
      }),
      { minLength: 8, maxLength: 16 },
    )
    .map((lots) => lots.map((lot, place) => ({ lotId: `lot ${place}`, ...lot }))),
});

test('a flow over time feeds everyone until the day found, and no flow feeds them a moment longer', () => {
  fc.assert(
    fc.property(aLargerStock, (input) => {
      const { days } = daysCovered(input);
      if (days === 'no-end') throw new Error('everyone here eats something');
      expect(canFeedUntil(input, days)).toBe(true);
      expect(canFeedUntil(input, addFractions(days, fraction(1, 1000)))).toBe(false);
    }),
    { numRuns: 60 },
  );
});
