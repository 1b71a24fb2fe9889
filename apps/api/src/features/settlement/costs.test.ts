import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fillersOf, listCosts, shareCosts } from './costs.ts';
import type { SettlementWish } from './schema.ts';

type Filled = { household: number; isPail: boolean; isTreated: boolean };
type Day = Parameters<typeof listCosts>[1];

/** A day as the log has it: No. 10 cans of wheat and pails of it, with absorbers or without. */
const aDay = (filled: readonly Filled[], more: Partial<Day> = {}): Day =>
  ({
    session: { lineFeeMinorUnits: 25 },
    pours: filled.map(({ household, isPail, isTreated }) => ({
      pour: {
        ...{ undoneEntryId: null, householdId: `h${household}`, targetGrams: isPail ? 16_000 : 2_500 },
        treatment: isTreated ? 'oxygen-absorber' : 'none',
      },
      kind: {
        containerKindId: isPail ? 'pail' : 'can',
        capacityMicrolitres: isPail ? 22_700_000 : 3_100_000,
      },
      food: { keepingClass: null, bulkMicrogramsPerMillilitre: 800_000 },
      household: { seat: household, name: `Household ${household}` },
    })),
    supplies: [absorber('small', 300), absorber('large', 2_000)],
    items: [{ equipmentItemId: 'sealer', name: 'Can sealer' }],
    ...more,
  }) as unknown as Day;
const absorber = (supplyId: string, sizeMillilitres: number) => ({
  supply: { supplyId, name: supplyId, kind: 'absorber', containerKindId: null, sizeMillilitres },
  ...{ onHandPieces: 1000, worthMinorUnits: 12_345 },
});
const wish = (more: Partial<SettlementWish>): SettlementWish =>
  ({ supplies: [], equipmentFees: [], sundries: [], note: '', ...more }) as SettlementWish;
const used = (supplyId: string, usedPieces: number) => ({
  ...{ supplyId, usedPieces, spoiltPieces: 0, spoiltByMachinePieces: 0 },
});
const settle = (day: Day, of: SettlementWish) => shareCosts(listCosts(of, day), fillersOf(day.pours));

test('absorbers are shared by the oxygen that they take up: a pail pays for more of them than a can', () => {
  const day = aDay(
    [
      { household: 1, isPail: true, isTreated: true },
      { household: 2, isPail: false, isTreated: true },
      { household: 2, isPail: false, isTreated: true },
      { household: 3, isPail: false, isTreated: false },
    ],
    { supplies: [absorber('small', 300)] as unknown as Day['supplies'] },
  );
  const [cost] = settle(day, wish({ supplies: [used('small', 100)] })).costs;
  const [pail = 0, cans = 0, none] = cost?.shares.map(({ minorUnits }) => minorUnits) ?? [];
  expect(pail).toBeGreaterThan(cans);
  expect([pail + cans, none]).toEqual([cost?.minorUnits, 0]);
  expect(cost?.shares.map(({ containers }) => containers)).toEqual([1, 2, 0]);
});

test('whatever was filled, used, lent and bought, the charges add up to what was spent', () => {
  const filled = fc.array(
    fc.record({ household: fc.integer({ min: 1, max: 6 }), isPail: fc.boolean(), isTreated: fc.boolean() }),
    { minLength: 1, maxLength: 40 },
  );
  const costs = fc.record({
    small: fc.nat(900),
    large: fc.nat(900),
    fee: fc.integer({ min: 1, max: 100_000 }),
    tea: fc.integer({ min: 1, max: 100_000 }),
  });
  fc.assert(
    fc.property(filled, costs, (containers, { small, large, fee, tea }) => {
      const paidBy = { who: 'household' as const, householdId: 'h1' };
      const {
        charges,
        storehouseMinorUnits,
        totalMinorUnits,
        costs: shared,
      } = settle(
        aDay(containers),
        wish({
          supplies: [used('small', small), used('large', large)],
          equipmentFees: [{ itemId: 'sealer', minorUnits: fee }],
          sundries: [{ what: 'Tea', minorUnits: tea, paidBy }],
        }),
      );
      const charged = charges.reduce((sum, { minorUnits }) => sum + minorUnits, 0);
      expect(charged + storehouseMinorUnits).toBe(totalMinorUnits);
      for (const { shares, minorUnits } of shared)
        expect(shares.reduce((sum, share) => sum + share.minorUnits, 0)).toBe(
          shares.length > 0 ? minorUnits : 0,
        );
    }),
  );
});
