import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costPerUse, lateLoans, tenthsPercent, usedHours, waitedFor } from './use-figures.ts';

const HOUR = 3_600_000;
const at = (hour: number) => hour * HOUR;
const from = (start: number, end: number) => ({ startMs: at(start), endMs: at(end) });
/** Ten days, so that shares are told at a glance: 240 hours a piece. */
const SPAN = from(0, 240);

describe('the hours that pieces were in use', () => {
  test.for([
    { name: 'a day of ten', pieces: [{ sinceMs: 0, used: [from(24, 48)] }], some: 24, of: 240 },
    {
      name: 'two pieces, one idle: 36 h of 480 h',
      pieces: [
        { sinceMs: 0, used: [from(0, 12), from(100, 124)] },
        { sinceMs: 0, used: [] },
      ],
      ...{ some: 36, of: 480 },
    },
    {
      name: 'what reaches over the span is cut off: 10 h at its start and 5 h at its end',
      pieces: [{ sinceMs: -at(50), used: [from(-20, 10), from(235, 260)] }],
      ...{ some: 15, of: 240 },
    },
    {
      name: 'a piece bought in the middle is there for half of it, and what was before it is nobody’s use',
      pieces: [{ sinceMs: at(120), used: [from(110, 130)] }],
      ...{ some: 10, of: 120 },
    },
    {
      name: 'two that overlap count once: 0 to 30',
      pieces: [{ sinceMs: 0, used: [from(0, 20), from(10, 30)] }],
      ...{ some: 30, of: 240 },
    },
    { name: 'a piece to come is not there', pieces: [{ sinceMs: at(300), used: [] }], some: 0, of: 0 },
  ])('$name', ({ pieces, some, of }) => {
    expect(usedHours(pieces, SPAN)).toEqual({ some, of });
  });

  test('are never more than there are', () => {
    const hour = fc.integer({ min: -100, max: 400 });
    const used = fc
      .tuple(hour, fc.integer({ min: 1, max: 100 }))
      .map(([start, long]) => from(start, start + long));
    const piece = fc.record({ sinceMs: hour.map(at), used: fc.array(used) }, { noNullPrototype: true });
    fc.assert(
      fc.property(fc.array(piece), (pieces) => {
        const { some, of } = usedHours(pieces, SPAN);
        expect(some).toBeGreaterThanOrEqual(0);
        expect(some).toBeLessThanOrEqual(of);
      }),
    );
  });

  test('an empty time is no use at all', () => {
    expect(() => usedHours([{ sinceMs: 0, used: [from(5, 5)] }], SPAN)).toThrow(/ends after it starts/);
  });
});

test('a loan is late two hours after it was due, also while it is out; one due later is not counted', () => {
  const loans = [
    { dueMs: at(10), backMs: at(9) }, // early
    { dueMs: at(20), backMs: at(22) }, // at the very end of the grace
    { dueMs: at(30), backMs: at(32) + 1 }, // a moment after it
    { dueMs: at(40), backMs: null }, // out still, 200 hours on
    { dueMs: at(239), backMs: null }, // out, and an hour late at the end of the span
    { dueMs: at(240), backMs: null }, // due after the span
    { dueMs: -1, backMs: at(100) }, // due before it
  ];
  expect(lateLoans(loans, SPAN)).toEqual({ some: 2, of: 5 });
  expect(lateLoans([], SPAN)).toEqual({ some: 0, of: 0 });
});

test.for([
  { cost: 4500, uses: 12, each: 375, because: '45.00 over 12 uses is 3.75' },
  { cost: 1000, uses: 3, each: 333, because: '10.00 over 3 is 3.33 and a third' },
  { cost: 5, uses: 2, each: 3, because: 'half a cent goes up' },
  { cost: 0, uses: 7, each: 0, because: 'what cost nothing costs nothing' },
  { cost: -2400, uses: 10, each: -240, because: 'a borrower paid for a gauge that nobody bought yet' },
  { cost: -1, uses: 10, each: 0, because: 'a tenth of a cent is none, and no minus stands before it' },
  { cost: 900, uses: 0, each: null, because: 'nothing can be told of no use' },
])('$because', ({ cost, uses, each }) => {
  expect(costPerUse(cost, uses)).toBe(each);
});

test('who waited got it, waits still, or went without', () => {
  const nowMs = at(100);
  const wishes = [
    { startMs: at(50), endedMs: at(40), isServed: true },
    { startMs: at(50), endedMs: at(40), isServed: false }, // stopped waiting, or let the offer lapse
    { startMs: at(90), endedMs: null, isServed: false }, // its time is over, and nobody ended it
    { startMs: at(120), endedMs: null, isServed: false }, // it may still come free
  ];
  expect(waitedFor(wishes, nowMs)).toEqual({ served: 1, waiting: 1, without: 2 });
  expect(waitedFor([], nowMs)).toEqual({ served: 0, waiting: 0, without: 0 });
});

test.for([
  { some: 24, of: 240, tenths: 100, because: 'a day of ten is 10.0 %' },
  { some: 1, of: 3, tenths: 333, because: 'a third is 33.3 %' },
  { some: 1, of: 2000, tenths: 1, because: 'half a tenth goes up' },
  { some: 5, of: 5, tenths: 1000, because: 'all is 100.0 %' },
  { some: 0, of: 0, tenths: null, because: 'of nothing there is no share' },
])('$because', ({ some, of, tenths }) => {
  expect(tenthsPercent({ some, of })).toBe(tenths);
});

test('more than all is no share', () => {
  expect(() => tenthsPercent({ some: 2, of: 1 })).toThrow(/at most all/);
});
