import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type BagAllotment, type BagPlan, planBagPieces } from './bag-pieces.ts';
import { cutNumberedBags } from './bag-pieces-numbered.ts';

/** Owners A, B, C … in seats 1, 2, 3 …; those named in `whole` were promised whole bags. */
const allotmentsOf = (units: readonly number[], whole = ''): BagAllotment[] =>
  units.map((amount, position) => {
    const ownerId = String.fromCharCode(65 + position);
    return { ownerId, seat: position + 1, units: amount, wholeBags: whole.includes(ownerId) };
  });
const asText = (plan: BagPlan) =>
  plan.bags.map((bag) => bag.pieces.map((piece) => `${piece.ownerId}${piece.units}`).join(' '));
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

test('three bags of 50 for 30, 45, 20, 20 and 35 need six pieces, and the tie goes by seat', () => {
  // {A, C} = 50 and {B, D, E} = 100; {A, D} and {B, C, E} would do as well but come later by seat.
  const plan = planBagPieces(allotmentsOf([30, 45, 20, 20, 35]), [50, 50, 50]);
  expect(plan.pieceCount).toBe(6);
  expect(plan.isFewest).toBe(true);
  expect(asText(plan)).toEqual(['A30 C20', 'B45 D5', 'D15 E35']);
});

test('owners of whole bags are never in a group with others', () => {
  expect(asText(planBagPieces(allotmentsOf([100, 30, 20]), [50, 50, 50]))).toEqual(['A50', 'A50', 'B30 C20']);
});

test('the worked wheat lot with its torn bag keeps the promised bags whole', () => {
  // Five bags of 22,680 g and the torn one, third in number, of 20,412 g; B and C were promised whole bags.
  const full = 22_680;
  const nets = [full, full, 20_412, full, full, full];
  const cut = cutNumberedBags({
    bags: nets
      .map((netGrams, position) => ({ bagId: `bag ${position + 1}`, number: position + 1, netGrams }))
      .toReversed(),
    awards: allotmentsOf([52_164, 45_360, full, 13_608], 'BC').map(({ units, ...owner }) => ({
      ...owner,
      grams: units,
    })),
  });
  expect(
    cut.bags.map((bag) => [bag.number, bag.pieces.map((piece) => `${piece.ownerId} ${piece.grams}`)]),
  ).toEqual([
    [1, ['B 22680']],
    [2, ['B 22680']],
    [3, ['A 20412']],
    [4, ['C 22680']],
    [5, ['A 22680']],
    [6, ['A 9072', 'D 13608']],
  ]);
  expect(cut.pieceCount).toBe(7);
  expect(cut.isFewest).toBe(true);
});

test('an award that is no sum of whole bags keeps as many whole as fit in it', () => {
  const plan = planBagPieces(allotmentsOf([70, 80], 'B'), [50, 50, 50]);
  expect(asText(plan)).toEqual(['B50', 'A50', 'A20 B30']);
});

test('bags of two sizes are matched to whoever they fit', () => {
  // 25 + 50 fill A; B and C take a bag of 25 and the common stock what is left of the last one.
  const plan = planBagPieces(allotmentsOf([75, 25, 20, 30]), [25, 50, 25, 50]);
  expect(plan.pieceCount).toBe(4 + 4 - 3);
  expect(asText(plan)).toEqual(['A25', 'A50', 'B25', 'C20 D30']);
});

test('of two groupings with equally many groups the shorter first group wins', () => {
  // {A, B} fill the two bags of 25 and {C, D} the one of 70; {A, B, C} and {D} the other way round come later.
  const plan = planBagPieces(allotmentsOf([20, 30, 20, 50]), [25, 25, 70]);
  expect(asText(plan)).toEqual(['A20 B5', 'B25', 'C20 D50']);
});

test('owners who get nothing are left out, and no bags need no plan', () => {
  expect(asText(planBagPieces(allotmentsOf([0, 50]), [50]))).toEqual(['B50']);
  expect(planBagPieces(allotmentsOf([0]), [])).toEqual({ bags: [], pieceCount: 0, isFewest: true });
});

test('beyond sixteen owners pairs are found first, and the plan says that it may not be the fewest', () => {
  const units = Array.from({ length: 20 }, (_, position) => (position < 10 ? 20 : 30));
  const plan = planBagPieces(
    allotmentsOf(units),
    Array.from({ length: 10 }, () => 50),
  );
  expect(plan.isFewest).toBe(false);
  expect(plan.pieceCount).toBe(20);
});

test('beyond sixteen owners whoever fills whole bags alone is not cut', () => {
  // 25 owners of 2 fill one bag, and no two of them any; the owner of 50 sits in the middle by seat.
  const units = Array.from({ length: 26 }, (_, position) => (position === 12 ? 50 : 2));
  expect(planBagPieces(allotmentsOf(units), [50, 50]).pieceCount).toBe(26);
});

const someUnits = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 24 });
const someSizes = fc.uniqueArray(fc.integer({ min: 5, max: 50 }), { minLength: 1, maxLength: 3 });

/** Bags of the sizes in turn until everything is in one, and a last owner who takes the room that is left. */
function filled(units: readonly number[], sizes: readonly number[]) {
  const bags: number[] = [];
  while (sum(bags) < sum(units)) bags.push(sizes[bags.length % sizes.length] ?? 1);
  return { units: [...units, sum(bags) - sum(units)], bags };
}

test('pieces of a bag add up to the bag, pieces of an owner to its allotment, whoever was promised whole bags', () => {
  fc.assert(
    fc.property(someUnits, someSizes, fc.nat(26), (units, sizes, wholeCount) => {
      const problem = filled(units, sizes);
      const allotments = problem.units.map((amount, position) => ({
        ownerId: `owner ${position}`,
        seat: position,
        units: amount,
        wholeBags: position < wholeCount,
      }));
      const plan = planBagPieces(allotments, problem.bags);
      for (const [position, bag] of plan.bags.entries()) {
        expect(bag.bagUnits).toBe(problem.bags[position]);
        expect(sum(bag.pieces.map((piece) => piece.units))).toBe(bag.bagUnits);
        expect(bag.pieces.every((piece) => piece.units > 0)).toBe(true);
        expect(new Set(bag.pieces.map((piece) => piece.ownerId)).size).toBe(bag.pieces.length);
      }
      const pieces = plan.bags.flatMap((bag) => bag.pieces);
      for (const { ownerId, units: allotted } of allotments) {
        expect(sum(pieces.map((piece) => (piece.ownerId === ownerId ? piece.units : 0)))).toBe(allotted);
      }
      expect(plan.pieceCount).toBe(pieces.length);
    }),
  );
});

const tenAtMost = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 10 });

test('the order in which owners are listed changes nothing', () => {
  fc.assert(
    fc.property(tenAtMost, someSizes, (units, sizes) => {
      const problem = filled(units, sizes);
      const allotments = problem.units.map((amount, position) => ({
        ownerId: `owner ${position}`,
        seat: position,
        units: amount,
      }));
      expect(planBagPieces(allotments.toReversed(), problem.bags)).toEqual(
        planBagPieces(allotments, problem.bags),
      );
    }),
  );
});

/** The fewest pieces found by cutting in every way: some owner takes all it can from some open bag, again and again. */
function fewestByTrying(
  owners: readonly number[],
  bags: readonly number[],
  seen = new Map<string, number>(),
): number {
  const left = owners.filter((units) => units > 0).toSorted((a, b) => a - b);
  const room = bags.filter((units) => units > 0).toSorted((a, b) => a - b);
  if (left.length === 0) return 0;
  const key = `${left}|${room}`;
  const known = seen.get(key);
  if (known !== undefined) return known;
  const tries = left.flatMap((units, owner) =>
    room.map((bagUnits, bag) => {
      const piece = Math.min(units, bagUnits);
      const owned = left.with(owner, units - piece);
      return 1 + fewestByTrying(owned, room.with(bag, bagUnits - piece), seen);
    }),
  );
  const fewest = Math.min(...tries);
  seen.set(key, fewest);
  return fewest;
}

test('no plan needs fewer pieces, as trying every way of cutting shows', () => {
  // A fewest plan is a tree of owners and bags, and a tree always has a leaf: an owner or a bag that one piece uses up.
  const fewUnits = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 4 });
  const fewSizes = fc.uniqueArray(fc.integer({ min: 5, max: 12 }), { minLength: 1, maxLength: 2 });
  fc.assert(
    fc.property(fewUnits, fewSizes, (units, sizes) => {
      const problem = filled(units, sizes);
      const plan = planBagPieces(allotmentsOf(problem.units), problem.bags);
      expect(plan.isFewest).toBe(true);
      expect(plan.pieceCount).toBe(fewestByTrying(problem.units, problem.bags));
    }),
    { numRuns: 200 },
  );
});

test('sixteen owners and a mixed load of bags are planned in good time', () => {
  const units = Array.from({ length: 15 }, (_, position) => 5000 + ((position * 7919) % 17) * 1000);
  const problem = filled(units, [22_680, 22_680, 22_680, 11_340]);
  const plan = planBagPieces(allotmentsOf(problem.units), problem.bags);
  expect(plan.isFewest).toBe(true);
  expect(plan.pieceCount).toBeLessThanOrEqual(problem.units.length + problem.bags.length - 1);
});

test.for([
  { allotments: allotmentsOf([30]), bags: [50], message: /30 allotted is not the 50 that the bags hold/ },
  { allotments: allotmentsOf([-1]), bags: [], message: /units must be a whole number/ },
  { allotments: allotmentsOf([0]), bags: [0], message: /a bag must hold something/ },
  { allotments: allotmentsOf([5, 5]).map((one) => ({ ...one, seat: 1 })), bags: [10], message: /one seat/ },
  {
    allotments: allotmentsOf([5, 5]).map((one) => ({ ...one, ownerId: 'A' })),
    bags: [10],
    message: /listed twice/,
  },
])('a plan without sense is refused: $message', ({ allotments, bags, message }) => {
  expect(() => planBagPieces(allotments, bags)).toThrow(message);
});

test('two bags of one number are refused', () => {
  const bag = { bagId: 'bag', number: 1, netGrams: 5 };
  expect(() => cutNumberedBags({ bags: [bag, bag], awards: [{ ownerId: 'A', seat: 1, grams: 10 }] })).toThrow(
    /two bags have one number/,
  );
});
