import { expect, test } from 'vitest';
import { aBook } from '../../test/a-book.ts';
import { bankCharge, paymentReceived, tinDiffers } from '../events/payment-events.ts';
import { reverse } from '../movement-draft.ts';
import type { AuditInput } from './audit-rows.ts';
import { tillFindings } from './till-checks.ts';

const payment = paymentReceived({ householdId: 'dell', amountMinorUnits: 7200, till: 'bank' });
const charge = bankCharge({ amountMinorUnits: 450 });
const short = tinDiffers({ differenceMinorUnits: -35 });
const over = tinDiffers({ differenceMinorUnits: 20 });
const told = [payment, charge, short, over].map((drafts) => ({ drafts }));
const look = (rows: Partial<AuditInput>, entries: Parameters<typeof aBook>[0] = told) =>
  tillFindings(aBook(entries, {}, rows)).map(({ holds, figure }) => ({ holds, figure }));
const line = (lineId: string, entryId: string, lineMinorUnits: number) => ({
  lineId,
  entryId,
  lineMinorUnits,
});
const count = (entryId: string | null, differenceMinorUnits: number) => ({
  countId: 'c',
  entryId,
  differenceMinorUnits,
});

test('lines and counts that say what the book says hold', () => {
  const bankMatches = [line('a', 'entry-1', 7200), line('b', 'entry-2', -450)];
  const tinCounts = [count('entry-3', -35), count('entry-4', 20), count(null, 0)];
  expect(look({ bankMatches, tinCounts })).toEqual([
    { holds: true, figure: 'lines matched: 2, of another amount: 0, taken back: 0, matched twice: 0' },
    { holds: true, figure: 'counts: 3, not booked as counted: 0' },
    { holds: true, figure: 'digests: 0, no longer the same: 0' },
  ]);
});

test.for([
  { bankMatches: [line('a', 'entry-1', 7201)], figure: 'of another amount: 1', because: 'a cent too much' },
  { bankMatches: [line('a', 'entry-1', -7200)], figure: 'of another amount: 1', because: 'the wrong way' },
  { bankMatches: [line('a', 'entry-3', -35)], figure: 'of another amount: 1', because: 'not of the bank' },
  {
    bankMatches: [line('a', 'entry-1', 7200), line('b', 'entry-1', 7200)],
    figure: 'matched twice: 1',
    because: 'two lines',
  },
  {
    bankMatches: [line('a', 'entry-1', 7200), line('a', 'entry-2', -450)],
    figure: 'matched twice: 1',
    because: 'two entries',
  },
])('a matched line breaks: $because', ({ bankMatches, figure }) => {
  const [bank] = look({ bankMatches });
  expect(bank?.holds).toBe(false);
  expect(bank?.figure).toContain(figure);
});

test('a line matched with an entry that was taken back breaks', () => {
  const [bank] = look({ bankMatches: [line('a', 'entry-1', 7200)] }, [
    ...told,
    { drafts: reverse(payment), reverses: 1 },
  ]);
  expect(bank).toMatchObject({ holds: false, figure: expect.stringContaining('taken back: 1') });
});

test.for([count('entry-3', -36), count(null, 5), count('entry-1', 7200)])(
  'a count that is not booked as counted breaks: %o',
  (wrong) => {
    expect(look({ tinCounts: [wrong] })[1]).toMatchObject({ holds: false });
  },
);

// Too little is a loss of 5000, too much a gift of 4020 (job map 4.4).
test('what a count lacks goes to losses, what it has over to gifts', () => {
  expect(short.map(({ source, destination }) => [source.kind, destination.kind])).toEqual([
    ['cash_tin', 'losses'],
  ]);
  expect(over.map(({ source, destination }) => [source.kind, destination.kind])).toEqual([
    ['cash_gifts', 'cash_tin'],
  ]);
  expect(tinDiffers({ differenceMinorUnits: 0 })).toEqual([]);
});

test('a close whose entries no longer give its digest does not hold', () => {
  const digests = [
    { closedThrough: '2025-12-31', isSame: true },
    { closedThrough: '2026-12-31', isSame: false },
  ];
  expect(look({ digests })[2]).toEqual({ holds: false, figure: 'digests: 2, no longer the same: 1' });
});
