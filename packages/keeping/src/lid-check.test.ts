import { describe, expect, test } from 'vitest';
import { isLidDrawn, isLidOpen, type LidSaying, lidDueMs, lidStateOf } from './lid-check.ts';

const HOUR = 3_600_000;
const CLOSED = Date.UTC(2026, 11, 5, 17, 5);
const jar = (facts: Partial<Parameters<typeof lidStateOf>[0]> = {}) => ({
  ...{ closedMs: CLOSED, said: null, lastLook: null },
  ...facts,
});
const said = (says: LidSaying, ofClosedMs = CLOSED) => ({ said: { says, ofClosedMs } });

test('a lid is drawn down in glass by a vacuum or an absorber, and may be where nobody wrote down which', () => {
  expect(isLidDrawn('glass', 'vacuum')).toBe(true);
  expect(isLidDrawn('glass', 'oxygen-absorber')).toBe(true);
  expect(isLidDrawn('glass', null)).toBe(true);
  expect(isLidDrawn('glass', 'none')).toBe(false);
  expect(isLidDrawn('glass', 'freeze-thaw-freeze')).toBe(false);
  expect(isLidDrawn('metal', 'vacuum')).toBe(false);
  expect(isLidDrawn(null, 'vacuum')).toBe(false);
});

test('only what is to be looked at or is loose is open', () => {
  expect((['early', 'due', 'loose', 'held', 'looked-at'] as const).filter(isLidOpen)).toEqual([
    'early',
    'due',
    'loose',
  ]);
});

describe('a lid', () => {
  // Job map 7.8: "centre held down after 24 h".
  test('tells nothing before 24 hours are over, and is looked at from then on', () => {
    expect(lidDueMs(CLOSED)).toBe(Date.UTC(2026, 11, 6, 17, 5));
    expect(lidStateOf(jar(), CLOSED + 24 * HOUR - 1)).toBe('early');
    expect(lidStateOf(jar(), CLOSED + 24 * HOUR)).toBe('due');
  });

  test('that held asks for nothing, and one that was loose waits for whoever closes it again', () => {
    expect(lidStateOf(jar(said('held')), CLOSED + 30 * HOUR)).toBe('held');
    expect(lidStateOf(jar(said('loose')), CLOSED + 30 * HOUR)).toBe('loose');
  });

  test('that was closed again begins anew, whatever was said before', () => {
    const again = { closedMs: CLOSED + 30 * HOUR };
    expect(lidStateOf(jar({ ...said('loose'), ...again }), CLOSED + 31 * HOUR)).toBe('early');
    expect(lidStateOf(jar({ ...said('held'), ...again }), CLOSED + 54 * HOUR)).toBe('due');
  });

  test.for([
    { hours: 25, outcome: 'table', state: 'looked-at', because: 'a whole look a day later answers for it' },
    { hours: 3, outcome: 'table', state: 'due', because: 'a look on the same day does not' },
    { hours: 3, outcome: 'discard', state: 'looked-at', because: 'what is thrown away is asked nothing' },
    { hours: -3, outcome: 'kitchen-soon', state: 'due', because: 'it was closed again since' },
  ] as const)('looked at $hours hours after: $because', ({ hours, outcome, state }) => {
    const lastLook = { atMs: CLOSED + hours * HOUR, outcome };
    expect(lidStateOf(jar({ lastLook }), CLOSED + 48 * HOUR)).toBe(state);
  });
});
