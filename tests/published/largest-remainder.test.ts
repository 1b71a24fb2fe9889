import { splitByWeight } from '@sheafbook/sharing';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import 'largest-remainder-round';

// Census of 1790 and the 120 seats of the vetoed bill of 1792: COMAP, For All Practical Purposes, 10th ed., chapter 14,
// table 14.5 (digfir-published.macmillanusa.com, fapp10e, ch14, example 6). Populations as reprinted with it.
const STATES_1790 = [
  { state: 'Virginia', people: 630_560, seatsOf120: 21 },
  { state: 'Massachusetts', people: 475_327, seatsOf120: 16 },
  { state: 'Pennsylvania', people: 432_879, seatsOf120: 14 },
  { state: 'North Carolina', people: 353_523, seatsOf120: 12 },
  { state: 'New York', people: 331_589, seatsOf120: 11 },
  { state: 'Maryland', people: 278_514, seatsOf120: 9 },
  { state: 'Connecticut', people: 236_841, seatsOf120: 8 },
  { state: 'South Carolina', people: 206_236, seatsOf120: 7 },
  { state: 'New Jersey', people: 179_570, seatsOf120: 6 },
  { state: 'New Hampshire', people: 141_822, seatsOf120: 5 },
  { state: 'Vermont', people: 85_533, seatsOf120: 3 },
  { state: 'Georgia', people: 70_835, seatsOf120: 2 },
  { state: 'Kentucky', people: 68_705, seatsOf120: 2 },
  { state: 'Rhode Island', people: 68_446, seatsOf120: 2 },
  { state: 'Delaware', people: 55_540, seatsOf120: 2 },
];
const people1790 = STATES_1790.map((row) => row.people);

test('shares out 120 seats as the vetoed bill of 1792 did', () => {
  expect(people1790.reduce((sum, people) => sum + people, 0)).toBe(3_615_920);
  expect(splitByWeight(120, people1790)).toEqual(STATES_1790.map((row) => row.seatsOf120));
});

// MAA Convergence, "Apportioning Representatives in the United States Congress: Jefferson's Method": with 105 seats the
// method of largest remainders agrees with the enacted result (divisor 33,000, rounded down) in 13 of the 15 states;
// Virginia gets one fewer, 18 for 19, and Delaware one more, 2 for 1.
test('shares out 105 seats as enacted in 1792 but for Virginia and Delaware', () => {
  const enacted = people1790.map((people) => Math.floor(people / 33_000));
  expect(enacted.reduce((sum, seats) => sum + seats, 0)).toBe(105);
  const seats = splitByWeight(105, people1790);
  const differing = STATES_1790.flatMap(({ state }, position) =>
    seats[position] === enacted[position]
      ? []
      : { state, seats: seats[position], enacted: enacted[position] },
  );
  expect(differing).toEqual([
    { state: 'Virginia', seats: 18, enacted: 19 },
    { state: 'Delaware', seats: 2, enacted: 1 },
  ]);
});

// Wikipedia, "Alabama paradox": two published examples in which one more seat costs a small party one of its own.
test.for([
  { votes: [6, 6, 2], seats: 10, before: [4, 4, 2], after: [5, 5, 1] },
  { votes: [5670, 3850, 420, 60], seats: 323, before: [183, 124, 14, 2], after: [184, 125, 13, 2] },
])('shows the Alabama paradox of $votes at $seats seats', ({ votes, seats, before, after }) => {
  expect(splitByWeight(seats, votes)).toEqual(before);
  expect(splitByWeight(seats + 1, votes)).toEqual(after);
});

test.for([
  {
    // A cost-accounting textbook's example as quoted on public pages: freight of $48.00 by weight, an item of 300 of the
    // 1,700 lb bears $8.47. The other two are arithmetic: 16.9412 and 22.5882, the spare cent to the largest fraction.
    what: 'freight of 48.00 over 300, 600 and 800 lb',
    totalCents: 4800,
    weights: [300, 600, 800],
    parts: [847, 1694, 2259],
  },
  {
    // Oracle, "Allocating Freight Costs by Item for Inbound Transactions": 12.50 over 50, 60 and 90 is 3.13, 3.75, 5.62.
    // The fractions of the first and the last tie at half a cent, so this also shows that the earlier wins.
    what: 'freight of 12.50 over 50, 60 and 90',
    totalCents: 1250,
    weights: [50, 60, 90],
    parts: [313, 375, 562],
  },
  {
    // Arithmetic: 561.16818, 336.70091, 224.46727, 112.23364; two cents left, to the first and the third.
    what: '1,234.57 by shares 5:3:2:1',
    totalCents: 123_457,
    weights: [5, 3, 2, 1],
    parts: [56_117, 33_670, 22_447, 11_223],
  },
])('shares $what to the cent', ({ totalCents, weights, parts }) => {
  expect(splitByWeight(totalCents, weights)).toEqual(parts);
});

type Spread = (this: readonly number[], totalSeats: number) => number[];

/** The package hangs its function on every array; it is taken down at once, so that nothing else here meets it. */
function takeSpread(): Spread {
  const spread: unknown = Reflect.get(Array.prototype, 'spread');
  Reflect.deleteProperty(Array.prototype, 'spread');
  if (typeof spread !== 'function') throw new Error('largest-remainder-round has no spread');
  return spread as Spread;
}
const spread = takeSpread();

// The package orders remainders by their first four decimals, so weights are kept small enough (a sum of 1,000 at most)
// for different remainders to differ there; it takes a total of 0 for "not given".
test('agrees with the package largest-remainder-round on random votes', () => {
  const someVotes = fc
    .array(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 10 })
    .filter((votes) => votes.some(Boolean));
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5000 }), someVotes, (seats, votes) => {
      expect(splitByWeight(seats, votes)).toEqual(spread.call(votes, seats));
    }),
    { numRuns: 1000 },
  );
});
