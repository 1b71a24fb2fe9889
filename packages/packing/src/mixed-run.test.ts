import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findMixes, type MixableWish, mixMoves, shareMixedRun } from './mixed-run.ts';

const part = (seat: number, putInGrams: number) => ({ householdId: `H${seat}`, seat, putInGrams });

const someParts = fc
  .array(fc.integer({ min: 1, max: 900_000 }), { minLength: 1, maxLength: 12 })
  .map((grams) => grams.map((putInGrams, at) => part(at + 1, putInGrams)));
const someFill = fc.integer({ min: 1, max: 25_000 });
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

describe('a mixed run', () => {
  test('conserves every household’s grams and those of all together', () => {
    fc.assert(
      fc.property(someParts, someFill, (parts, gramsEach) => {
        const { containers, leftGrams, shares } = shareMixedRun(parts, gramsEach);
        for (const share of shares)
          expect(share.containers * gramsEach + share.leftGrams).toBe(share.putInGrams + share.gotGrams);
        expect(sum(shares.map(({ gotGrams }) => gotGrams))).toBe(0);
        expect(sum(shares.map((share) => share.containers))).toBe(containers);
        expect(sum(shares.map((share) => share.leftGrams))).toBe(leftGrams);
        expect(leftGrams).toBeLessThan(gramsEach);
      }),
    );
  });

  test('gives each its quota of containers, rounded down or up, and moves at most one container’s content', () => {
    fc.assert(
      fc.property(someParts, someFill, (parts, gramsEach) => {
        const { containers, shares } = shareMixedRun(parts, gramsEach);
        const inAll = BigInt(sum(parts.map(({ putInGrams }) => putInGrams)));
        for (const share of shares) {
          const scaled = BigInt(share.putInGrams) * BigInt(containers);
          const floor = Number(scaled / inAll);
          const ceiling = scaled % inAll === 0n ? floor : floor + 1;
          expect([floor, ceiling]).toContain(share.containers);
          expect(Math.abs(share.gotGrams)).toBeLessThanOrEqual(gramsEach);
        }
      }),
    );
  });

  test('fills no fewer containers than households by themselves, and is the same in whatever order they are told', () => {
    fc.assert(
      fc.property(someParts, someFill, (parts, gramsEach) => {
        const run = shareMixedRun(parts, gramsEach);
        expect(run.containers).toBeGreaterThanOrEqual(sum(run.shares.map((share) => share.aloneContainers)));
        expect(shareMixedRun(parts.toReversed(), gramsEach)).toEqual(run);
      }),
    );
  });

  test('settles a tie by seat', () => {
    const { shares } = shareMixedRun([part(2, 1300), part(1, 1300)], 2600);
    expect(shares.map(({ seat, containers, gotGrams }) => [seat, containers, gotGrams])).toEqual([
      [1, 1, 1300],
      [2, 0, -1300],
    ]);
  });

  test('needs somebody who puts something in', () => {
    expect(() => shareMixedRun([], 2600)).toThrow();
    expect(() => shareMixedRun([part(1, 0)], 2600)).toThrow();
  });
});

const wish = (seat: number, facts: Partial<MixableWish> = {}): MixableWish => ({
  ...{ wishId: `W${seat}`, householdId: `H${seat}`, seat, line: 1, foodId: 'wheat', kindId: 'can' },
  ...{ treatment: 'oxygen-absorber', gramsEach: 2600, containers: 8, mayMix: true },
  lots: [{ lotId: 'L', grams: 22_680 }],
  ...facts,
});
const idsOf = (...wishes: MixableWish[]) => findMixes(wishes).map(({ wishIds }) => wishIds);

describe('wishes run as one', () => {
  test('where two households or more agreed, by seat', () => {
    expect(idsOf(wish(2), wish(1), wish(3, { mayMix: false }))).toEqual([['W1', 'W2']]);
    expect(idsOf(wish(1), wish(2, { mayMix: false }))).toEqual([]);
  });

  test.for([
    { facts: { line: 2 }, because: 'another line' },
    { facts: { kindId: 'jar' }, because: 'another kind' },
    { facts: { treatment: 'none' }, because: 'another treatment' },
    { facts: { gramsEach: 2500 }, because: 'another fill' },
    { facts: { lots: [{ lotId: 'M', grams: 9000 }] }, because: 'another lot' },
    { facts: { lots: [] }, because: 'nothing of it in bags' },
    {
      facts: {
        lots: [
          { lotId: 'L', grams: 9000 },
          { lotId: 'M', grams: 9000 },
        ],
      },
      because: 'food of two lots',
    },
  ])('and not with $because', ({ facts }) => {
    expect(idsOf(wish(1), wish(2, facts))).toEqual([]);
  });

  test('and not where a household wants the food in another way besides', () => {
    const besides = wish(2, { wishId: 'W2b', kindId: 'jar', mayMix: false });
    expect(idsOf(wish(1), wish(2), besides)).toEqual([]);
  });

  test('a household that wants fewer containers than it could fill puts in what they take', () => {
    const [mix] = findMixes([wish(1, { containers: 3 }), wish(2)]);
    expect(mix?.run.shares.map(({ putInGrams }) => putInGrams)).toEqual([7800, 22_680]);
  });
});

describe('the grams of a mixed run', () => {
  test('change hands bag by bag: each gets what it is to get, and no bag gives more than its owner had in it', () => {
    fc.assert(
      fc.property(someParts, someFill, fc.integer({ min: 1, max: 4 }), (parts, gramsEach, bags) => {
        const { shares } = shareMixedRun(parts, gramsEach);
        const pieces = parts.flatMap(({ householdId, putInGrams }, at) => {
          const each = Math.floor(putInGrams / bags);
          return Array.from({ length: bags }, (_, no) => ({
            ...{ bagId: `B${(at + no) % 5}`, bagNo: (at + no) % 5, householdId },
            grams: no === 0 ? putInGrams - each * (bags - 1) : each,
          })).filter(({ grams }) => grams > 0);
        });
        const moves = mixMoves(shares, pieces);
        for (const { householdId, gotGrams } of shares) {
          const got = sum(moves.filter(({ takerId }) => takerId === householdId).map(({ grams }) => grams));
          const gave = sum(moves.filter(({ giverId }) => giverId === householdId).map(({ grams }) => grams));
          expect(got - gave).toBe(gotGrams);
          expect(Math.min(got, gave)).toBe(0);
        }
        for (const { bagId, householdId, grams } of pieces) {
          const out = moves.filter((move) => move.bagId === bagId && move.giverId === householdId);
          expect(sum(out.map((move) => move.grams))).toBeLessThanOrEqual(grams);
        }
      }),
    );
  });
});
