import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type SessionCost, settleSession } from './settlement.ts';

const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, number) => sum + number, 0);
const NAMES = ['supplies', 'line-fee', 'scrap', 'breakage', 'equipment-fee', 'sundries'] as const;

/** Any day: who filled how many containers, and costs that some, all or none of the households took a part in. */
const someDay = fc.integer({ min: 1, max: 8 }).chain((households) => {
  const perHousehold = fc.array(fc.nat(300), { minLength: households, maxLength: households });
  const cost = fc.record(
    {
      name: fc.constantFrom(...NAMES),
      minorUnits: fc.nat(10_000_000),
      borneBy: fc.constantFrom('containers' as const, 'storehouse' as const),
      weights: perHousehold,
    },
    { requiredKeys: ['name', 'minorUnits', 'borneBy'], noNullPrototype: true },
  );
  return fc.record({ filled: perHousehold.filter((counts) => counts.some(Boolean)), costs: fc.array(cost) });
});
const settle = ({ filled, costs }: { filled: readonly number[]; costs: readonly unknown[] }) =>
  settleSession(
    costs as SessionCost[],
    filled.map((containers, seat) => ({ householdId: `household ${seat + 1}`, containers })),
  );

test('what households and the storehouse are charged adds up to what was spent, whatever the day', () => {
  fc.assert(
    fc.property(someDay, (day) => {
      const { charges, storehouseMinorUnits } = settle(day);
      const charged = sumOf(charges.map(({ minorUnits }) => minorUnits));
      expect(charged + storehouseMinorUnits).toBe(sumOf(day.costs.map(({ minorUnits }) => minorUnits)));
    }),
  );
});

test('each line adds up to its cost, each charge to its lines, and nobody is paid for a cost', () => {
  fc.assert(
    fc.property(someDay, (day) => {
      const { charges } = settle(day);
      const borne = day.costs.filter(({ borneBy, minorUnits }) => borneBy === 'containers' && minorUnits > 0);
      for (const [line, cost] of borne.entries())
        expect(sumOf(charges.map(({ lines }) => lines[line]?.minorUnits ?? Number.NaN))).toBe(
          cost.minorUnits,
        );
      for (const { lines, minorUnits } of charges) {
        expect(sumOf(lines.map((line) => line.minorUnits))).toBe(minorUnits);
        expect(lines.every((line) => line.minorUnits >= 0)).toBe(true);
      }
    }),
  );
});

test('who filled nothing and took no part pays nothing', () => {
  fc.assert(
    fc.property(someDay, ({ filled, costs }) => {
      const plain = costs.map(({ weights: _, ...cost }) => cost);
      const { charges } = settle({ filled: [0, ...filled], costs: plain });
      expect(charges[0]?.minorUnits).toBe(0);
    }),
  );
});
