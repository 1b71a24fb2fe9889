import { describe, expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { dayInZone, isTimeZone } from './time-zone.ts';

test.for(['America/Denver', 'Europe/Madrid', 'Asia/Kolkata', 'Pacific/Kiritimati', 'UTC'])(
  '%s is a zone',
  (name) => {
    expect(isTimeZone(name)).toBe(true);
  },
);

test.for(['', 'Denver', '+05:30', '-07:00', 'America/Nowhere', 'constructor'])('"%s" is no zone', (name) => {
  expect(isTimeZone(name)).toBe(false);
});

describe('the day on the wall', () => {
  // Denver is UTC−7 in winter and UTC−6 in summer; the clocks go forward on 8 March 2026 at 09:00 UTC.
  test.for([
    { instant: '2026-11-25T06:59:59.999Z', timeZone: 'America/Denver', day: '2026-11-24' },
    { instant: '2026-11-25T07:00:00Z', timeZone: 'America/Denver', day: '2026-11-25' },
    { instant: '2026-03-09T05:59:59Z', timeZone: 'America/Denver', day: '2026-03-08' },
    { instant: '2026-03-09T06:00:00Z', timeZone: 'America/Denver', day: '2026-03-09' },
    { instant: '2026-11-25T18:30:00Z', timeZone: 'Asia/Kolkata', day: '2026-11-26' },
    { instant: '2026-12-31T10:00:00Z', timeZone: 'Pacific/Kiritimati', day: '2027-01-01' },
    { instant: '0987-06-05T00:00:00Z', timeZone: 'UTC', day: '0987-06-05' },
  ])('at $instant in $timeZone is $day', ({ instant, timeZone, day }) => {
    expect(dayInZone(Date.parse(instant), timeZone)).toBe(day);
  });

  test('is refused for an unknown zone, for no instant, and outside the calendar', () => {
    expect(() => dayInZone(0, 'America/Nowhere')).toThrow(AssertionError);
    expect(() => dayInZone(Number.NaN, 'UTC')).toThrow(AssertionError);
    expect(() => dayInZone(Number.POSITIVE_INFINITY, 'UTC')).toThrow(AssertionError);
    expect(() => dayInZone(Date.UTC(12_000, 0), 'UTC')).toThrow(AssertionError);
  });
});
