import { expect, test } from 'vitest';
import { asKnownOn, splitPeriod } from './as-known-on.ts';
import type { BalanceLine } from './statement.ts';

const rows = [
  { id: 'march, written in march', onDay: '2026-03-20', recordedAt: '2026-03-20T10:00:00Z' },
  { id: 'march, written in may', onDay: '2026-03-25', recordedAt: '2026-05-02T10:00:00Z' },
  { id: 'april', onDay: '2026-04-03', recordedAt: '2026-04-03T10:00:00Z' },
];

test('a payment of March that was written down in May was not known in April', () => {
  const known = asKnownOn(rows, { throughOn: '2026-03-31', knownAt: '2026-04-10T00:00:00Z' });
  expect(known.map((row) => row.id)).toEqual(['march, written in march']);
});

test('in May, March up to its 25th reads as it was, the 25th included', () => {
  const known = asKnownOn(rows, { throughOn: '2026-03-25', knownAt: '2026-05-31T00:00:00Z' });
  expect(known.map((row) => row.id)).toEqual(['march, written in march', 'march, written in may']);
});

test('what was written down at the very instant is known, a microsecond later is not', () => {
  const at = (recordedAt: string) =>
    asKnownOn([{ onDay: '2026-03-01', recordedAt }], {
      throughOn: '2026-03-31',
      knownAt: '2026-03-01T10:00:00.123456Z',
    }).length;
  expect(at('2026-03-01 10:00:00.123456+00')).toBe(1); // as PostgreSQL writes it
  expect(at('2026-03-01T10:00:00.123457Z')).toBe(0);
  expect(at('2026-03-01T10:00:00Z')).toBe(1);
});

test('an instant of another zone is refused rather than compared as text', () => {
  const knowledge = { throughOn: '2026-03-31', knownAt: '2026-04-10T00:00:00+02:00' };
  expect(() => asKnownOn(rows, knowledge)).toThrow('no UTC instant');
});

test('the first and the last day of a period belong to it', () => {
  const line = (onDay: string): BalanceLine => ({
    entryNo: 1,
    onDay,
    recordedAt: '2026-09-01T00:00:00Z',
    what: 'payment-received',
    causeId: null,
    amountMinorUnits: -10,
  });
  const lines = ['2026-08-31', '2026-09-01', '2026-09-30', '2026-10-01'].map(line);
  const period = splitPeriod(lines, { fromOn: '2026-09-01', throughOn: '2026-09-30' });
  expect(period.lines.map(({ onDay }) => onDay)).toEqual(['2026-09-01', '2026-09-30']);
  expect(period.openingMinorUnits).toBe(-10);
});
