import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { splitPeriod } from './as-known-on.ts';
import { type BalanceLine, buildStatement } from './statement.ts';

const aLine = (line: Partial<BalanceLine>): BalanceLine => ({
  entryNo: 1,
  onDay: '2026-09-05',
  recordedAt: '2026-09-05T08:00:00Z',
  what: 'shared-out',
  causeId: 'autumn-grain',
  amountMinorUnits: 100,
  ...line,
});

// Ashdown of job map 4.3: charge 165.48, deposit applied 72.00, balance paid 93.48.
test('Ashdown’s statement of the autumn buy adds up by hand', () => {
  const statement = buildStatement({
    openingMinorUnits: 0,
    lines: [
      aLine({ entryNo: 8, what: 'payment-received', onDay: '2026-09-20', amountMinorUnits: -9348 }),
      aLine({ entryNo: 6, amountMinorUnits: 16548 }),
      aLine({ entryNo: 7, what: 'deposit-applied', amountMinorUnits: -7200 }),
    ],
    depositsHeld: [{ buyId: 'spring-beans', amountMinorUnits: 500 }],
  });
  const printed = statement.lines.map((line) => [
    line.entryNo,
    line.chargeMinorUnits,
    line.paymentMinorUnits,
    line.balanceMinorUnits,
  ]);
  expect(printed).toEqual([
    [6, 16548, 0, 16548],
    [7, 0, 7200, 9348],
    [8, 0, 9348, 0],
  ]);
  expect(statement).toMatchObject({
    chargesMinorUnits: 16548,
    paymentsMinorUnits: 16548,
    closingMinorUnits: 0,
    sign: 'nothing-due',
    depositsHeldMinorUnits: 500,
  });
});

test.for([
  { openingMinorUnits: 1, sign: 'you-owe' },
  { openingMinorUnits: -1, sign: 'you-are-owed' },
  { openingMinorUnits: 0, sign: 'nothing-due' },
])('a balance of $openingMinorUnits reads "$sign"', ({ openingMinorUnits, sign }) => {
  expect(buildStatement({ openingMinorUnits, lines: [], depositsHeld: [] }).sign).toBe(sign);
});

test('a line keeps whatever else its caller knows of it', () => {
  const line = { ...aLine({}), href: '/entries/1' };
  expect(buildStatement({ openingMinorUnits: 0, lines: [line], depositsHeld: [] }).lines[0]?.href).toBe(
    '/entries/1',
  );
});

test('a line that moves nothing, or half a cent, is refused', () => {
  for (const amountMinorUnits of [0, 0.5]) {
    const lines = [aLine({ amountMinorUnits })];
    expect(() => buildStatement({ openingMinorUnits: 0, lines, depositsHeld: [] })).toThrow(/amount/);
  }
});

const someLine = fc
  .record({
    entryNo: fc.integer({ min: 1, max: 500 }),
    day: fc.integer({ min: 1, max: 28 }),
    amountMinorUnits: fc.integer({ min: -100_000, max: 100_000 }).filter(Boolean),
  })
  .map(({ day, ...line }) => aLine({ ...line, onDay: `2026-09-${String(day).padStart(2, '0')}` }));
const someLines = fc.array(someLine, { maxLength: 40 });

test('charges less payments plus opening is closing, and closing is the last running balance', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e6, max: 1e6 }), someLines, (openingMinorUnits, lines) => {
      const statement = buildStatement({ openingMinorUnits, lines, depositsHeld: [] });
      const { chargesMinorUnits, paymentsMinorUnits, closingMinorUnits } = statement;
      expect(openingMinorUnits + chargesMinorUnits - paymentsMinorUnits).toBe(closingMinorUnits);
      expect(statement.lines.at(-1)?.balanceMinorUnits ?? openingMinorUnits).toBe(closingMinorUnits);
    }),
  );
});

test('one period closes with what the next opens with', () => {
  fc.assert(
    fc.property(someLines, (lines) => {
      const first = splitPeriod(lines, { fromOn: '2026-09-01', throughOn: '2026-09-14' });
      const second = splitPeriod(lines, { fromOn: '2026-09-15', throughOn: '2026-09-30' });
      const closing = buildStatement({ ...first, depositsHeld: [] }).closingMinorUnits;
      expect(second.openingMinorUnits).toBe(closing);
      expect(first.lines.length + second.lines.length).toBe(lines.length);
    }),
  );
});
