import fc from 'fast-check';
import { expect, test } from 'vitest';
import { settleDeposit } from './deposit.ts';
import { chargeLandedCost } from './landed-cost.ts';
import { awardsAfterWithdrawal, type PledgeTaker, placeWithdrawnAward } from './withdrawal.ts';

const NAMES = ['Ashdown', 'Birchall', 'Corran', 'Dell'];
const commonStock = { ownerId: 'common stock', roomUnits: 0 };
const pledger = (more: Partial<PledgeTaker>): PledgeTaker => ({
  ownerId: 'Ashdown',
  seat: 1,
  pledgeOrder: 0,
  awardUnits: 100,
  mostUnits: 100,
  ...more,
});

/** What each holds of a food once Dell has withdrawn: who may take more is given as the most of each pledge. */
function withoutDell(awarded: readonly number[], mosts: readonly number[], roomUnits = 0) {
  const awards = NAMES.map((ownerId, position) => ({ ownerId, grams: awarded[position] ?? 0 }));
  const pledgers = NAMES.slice(0, 3).map((ownerId, position) => ({
    ownerId,
    seat: position + 1,
    pledgeOrder: position,
    awardUnits: awarded[position] ?? 0,
    mostUnits: mosts[position] ?? 0,
  }));
  const answer = placeWithdrawnAward({
    withdrawnUnits: awarded[3] ?? 0,
    pledgers,
    waitlist: [],
    commonStock: { ...commonStock, roomUnits },
  });
  return awardsAfterWithdrawal(awards, 'Dell', answer);
}

test('autumn grain without Dell, who withdrew after the order, comes out to the cent', () => {
  // Corran takes the 30 lb of wheat, Birchall the 10 lb of oats, the common stock the 12 lb of beans.
  const wheat = withoutDell([115, 100, 50, 30], [115, 100, 80]);
  const oats = withoutDell([30, 40, 70, 10], [30, 50, 70]);
  const beans = withoutDell([40, 28, 20, 12], [40, 28, 20], 25);
  const owners = [...NAMES, 'common stock'].map((ownerId, position) => ({
    ownerId,
    seat: position + 1,
    isHousehold: ownerId !== 'common stock',
    bearsHouseholdPart: ownerId !== 'common stock',
  }));
  const { lines, totals } = chargeLandedCost({
    owners,
    goods: [
      { costLineId: 'wheat', netMinorUnits: 21_240, awards: wheat },
      { costLineId: 'oats', netMinorUnits: 11_250, awards: oats },
      { costLineId: 'beans', netMinorUnits: 8560, awards: beans },
    ],
    others: [
      { costLineId: 'freight', minorUnits: 8800, basis: { kind: 'blend', numerator: 1, denominator: 2 } },
    ],
  });
  const byWeight = lines.find((line) => line.costLineId === 'freight:by-weight');
  expect(byWeight?.shares.map((share) => [share.weight, share.minorUnits])).toEqual([
    [185, 1494],
    [178, 1437],
    [170, 1372],
    [0, 0],
    [12, 97],
  ]);
  expect(totals.map((total) => total.minorUnits)).toEqual([16_548, 15_884, 15_194, 1100, 1124]);
  expect(totals.reduce((sum, total) => sum + total.minorUnits, 0)).toBe(49_850);
  expect(settleDeposit(2300, 1100).refundMinorUnits).toBe(1200);
});

test('a withdrawn award goes to pledgers in pledge order, then the waitlist, then the common stock', () => {
  const answer = placeWithdrawnAward({
    withdrawnUnits: 100,
    pledgers: [
      pledger({ ownerId: 'later', seat: 1, pledgeOrder: 2, mostUnits: 110 }),
      pledger({ ownerId: 'first', seat: 9, pledgeOrder: 1, mostUnits: 130 }),
      pledger({ ownerId: 'full', seat: 2, pledgeOrder: 0 }),
    ],
    waitlist: [
      { ownerId: 'second waiting', seat: 4, waitOrder: 2, wantedUnits: 500 },
      { ownerId: 'first waiting', seat: 5, waitOrder: 1, wantedUnits: 20 },
    ],
    commonStock: { ownerId: 'common stock', roomUnits: 50 },
  });
  expect(answer).toEqual({
    placements: [
      { ownerId: 'first', takenAs: 'pledger', units: 30 },
      { ownerId: 'later', takenAs: 'pledger', units: 10 },
      { ownerId: 'first waiting', takenAs: 'waitlist', units: 20 },
      { ownerId: 'second waiting', takenAs: 'waitlist', units: 40 },
    ],
    leftUnits: 0,
  });
});

test('a pledge of whole bags takes whole bags only', () => {
  const answer = placeWithdrawnAward({
    withdrawnUnits: 60,
    pledgers: [pledger({ mostUnits: 200, stepUnits: 50 })],
    waitlist: [{ ownerId: 'waiting', seat: 4, waitOrder: 1, wantedUnits: 9, stepUnits: 5 }],
    commonStock,
  });
  expect(answer).toEqual({
    placements: [
      { ownerId: 'Ashdown', takenAs: 'pledger', units: 50 },
      { ownerId: 'waiting', takenAs: 'waitlist', units: 5 },
    ],
    leftUnits: 5,
  });
});

test('the household that withdrew keeps paying for what nobody took', () => {
  const answer = placeWithdrawnAward({ withdrawnUnits: 30, pledgers: [], waitlist: [], commonStock });
  expect(awardsAfterWithdrawal([{ ownerId: 'Dell', grams: 30 }], 'Dell', answer)).toEqual([
    { ownerId: 'Dell', grams: 30 },
  ]);
});

test('every unit withdrawn is placed or left, and nobody takes more than it has room for', () => {
  const someTaker = fc.record({ award: fc.nat(50), room: fc.nat(50), step: fc.integer({ min: 1, max: 9 }) });
  const someCase = fc.record({
    withdrawn: fc.nat(200),
    takers: fc.array(someTaker, { maxLength: 6 }),
    cap: fc.nat(40),
  });
  fc.assert(
    fc.property(someCase, ({ withdrawn, takers, cap }) => {
      const pledgers = takers.map(({ award, room, step }, position) =>
        pledger({
          ownerId: `owner ${position}`,
          seat: position + 1,
          awardUnits: award,
          mostUnits: award + room,
          stepUnits: step,
        }),
      );
      const { placements, leftUnits } = placeWithdrawnAward({
        withdrawnUnits: withdrawn,
        pledgers,
        waitlist: [],
        commonStock: { ...commonStock, roomUnits: cap },
      });
      expect(placements.reduce((sum, placement) => sum + placement.units, leftUnits)).toBe(withdrawn);
      for (const { ownerId, units } of placements) {
        const taker = takers[Number(ownerId.split(' ')[1])];
        expect(units).toBeLessThanOrEqual(taker?.room ?? cap);
        expect(units % (taker?.step ?? 1)).toBe(0);
      }
    }),
  );
});

test.for([
  { pledgers: [pledger({ mostUnits: 50 })], withdrawnUnits: 5, message: /the room of Ashdown/ },
  { pledgers: [pledger({ stepUnits: 0 })], withdrawnUnits: 5, message: /step of Ashdown must be at least 1/ },
  { pledgers: [], withdrawnUnits: -5, message: /withdrawnUnits must be a whole number/ },
])('a withdrawal without sense is refused: $message', ({ pledgers, withdrawnUnits, message }) => {
  expect(() => placeWithdrawnAward({ withdrawnUnits, pledgers, waitlist: [], commonStock })).toThrow(message);
});

test('awards that do not hold what was withdrawn are refused', () => {
  const answer = { placements: [], leftUnits: 30 };
  expect(() => awardsAfterWithdrawal([{ ownerId: 'Dell', grams: 29 }], 'Dell', answer)).toThrow(
    /must be the withdrawn award/,
  );
});
