import { expect, test } from 'vitest';
import { aBook } from '../../test/a-book.ts';
import { loanDepositApplied, loanDepositReceived } from '../events/loan-events.ts';
import type { AuditInput, AuditLoan } from './audit-rows.ts';
import { loanFindings } from './loan-checks.ts';

const look = (rows: Partial<AuditInput>, entries: Parameters<typeof aBook>[0] = []) =>
  loanFindings(aBook(entries, {}, rows));
const held = (bookingId: string, startMs: number, endMs: number, unitId = 'sealer') => ({
  ...{ bookingId, unitId, startMs, endMs },
});
const loan = (more: Partial<AuditLoan> = {}): AuditLoan => ({
  ...{ loanId: 'saturday', unitId: 'sealer', itemId: 'sealers', itemUnits: 1, outMs: 10, inMs: 20 },
  ...{ parts: [{ out: 2, back: 2 }], isCrippled: false },
  ...more,
});

test('times that touch, and loans that came back whole, hold', () => {
  const findings = look({ bookings: [held('a', 0, 10), held('b', 10, 20)], loans: [loan()] });
  expect(findings.map(({ number, holds, figure }) => [number, holds, figure])).toEqual([
    [11, true, 'times held: 2, overlapping: 0, loans: 1, things with more out than there are: 0'],
    [
      12,
      true,
      'loans: 1, parts: 1, back before out: 0, parts of which more came back: 0, back uncounted: 0, without a critical part: 0',
    ],
    [12, true, 'loans back: 1, deposits not settled: 0'],
  ]);
});

test.for([
  {
    because: 'a moment in common',
    bookings: [held('a', 0, 11), held('b', 10, 20)],
    figure: 'overlapping: 1',
  },
  {
    because: 'a short one within a long one, and one after both',
    bookings: [held('a', 0, 100), held('b', 1, 2), held('c', 50, 60)],
    figure: 'overlapping: 2',
  },
])('times break: $because', ({ bookings, figure }) => {
  const [finding] = look({ bookings });
  expect([finding?.holds, finding?.figure]).toEqual([false, expect.stringContaining(figure)]);
});

test('two pieces at one time do not overlap, unless there is but one of the thing', () => {
  const bookings = [held('a', 0, 10, 'dolly 1'), held('b', 0, 10, 'dolly 2')];
  const out = [loan({ unitId: 'dolly 1', inMs: null }), loan({ unitId: 'dolly 2', outMs: 12 })];
  expect(look({ bookings, loans: out.map((row) => ({ ...row, itemUnits: 2 })) })[0]?.holds).toBe(true);
  expect(look({ bookings, loans: out })[0]).toMatchObject({
    holds: false,
    figure: expect.stringContaining('things with more out than there are: 1'),
  });
});

test.for([
  { wrong: { inMs: 9 }, figure: 'back before out: 1' },
  { wrong: { parts: [{ out: 2, back: 3 }] }, figure: 'parts of which more came back: 1' },
  { wrong: { parts: [{ out: 2, back: null }] }, figure: 'back uncounted: 1' },
  { wrong: { isCrippled: true }, figure: 'without a critical part: 1' },
])('a loan breaks: $figure', ({ wrong, figure }) => {
  const [, finding] = look({ loans: [loan(wrong)] });
  expect([finding?.holds, finding?.figure]).toEqual([false, expect.stringContaining(figure)]);
});

test('a deposit that is held after its loan came back breaks', () => {
  const share = { householdId: 'hale', loanId: 'saturday', amountMinorUnits: 5000 };
  const taken = { drafts: loanDepositReceived({ ...share, till: 'cash_tin' }) };
  const settled = { drafts: loanDepositApplied(share) };
  const third = (loans: AuditLoan[], entries: Parameters<typeof aBook>[0]) => look({ loans }, entries)[2];
  expect(third([loan({ inMs: null })], [taken])?.holds).toBe(true);
  expect(third([loan()], [taken])).toMatchObject({
    holds: false,
    figure: 'loans back: 1, deposits not settled: 1',
  });
  expect(third([loan()], [taken, settled])?.holds).toBe(true);
});
