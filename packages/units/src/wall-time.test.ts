import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { instantOfWallTime, isWallTime, wallTimeInZone } from './wall-time.ts';

test.for([
  // Chicago is five hours behind in summer and six in winter; clocks went back on 1 November 2026.
  { wallTime: '2026-10-17T09:40', timeZone: 'America/Chicago', instant: '2026-10-17T14:40:00.000Z' },
  { wallTime: '2026-11-02T09:40', timeZone: 'America/Chicago', instant: '2026-11-02T15:40:00.000Z' },
  { wallTime: '2026-10-25T12:00', timeZone: 'Europe/Madrid', instant: '2026-10-25T11:00:00.000Z' },
  { wallTime: '2026-01-01T00:00', timeZone: 'UTC', instant: '2026-01-01T00:00:00.000Z' },
])('$wallTime in $timeZone is $instant', ({ wallTime, timeZone, instant }) => {
  expect(new Date(instantOfWallTime(wallTime, timeZone)).toISOString()).toBe(instant);
  expect(wallTimeInZone(Date.parse(instant), timeZone)).toBe(wallTime);
});

test.for(['2026-02-30T10:00', '2026-10-17T24:00', '2026-10-17 09:40', '2026-10-17', 'T09:40'])(
  '"%s" is no time on a wall',
  (text) => {
    expect(isWallTime(text)).toBe(false);
    expect(() => instantOfWallTime(text, 'UTC')).toThrow(AssertionError);
  },
);

test.for([
  // Europe goes to summer time at 01:00 UTC, whatever the hour of the place: 02:00 in Berlin is followed by 03:00.
  ['2027-03-28T00:59:00Z', 'Europe/Berlin', '2027-03-28T01:59'],
  ['2027-03-28T01:00:00Z', 'Europe/Berlin', '2027-03-28T03:00'],
  // The hour that comes twice.
  ['2026-11-01T06:30:00Z', 'America/Chicago', '2026-11-01T01:30'],
  ['2026-11-01T07:30:00Z', 'America/Chicago', '2026-11-01T01:30'],
] as const)('at %s a clock in %s shows %s', ([instant, timeZone, wallTime]) => {
  expect(wallTimeInZone(Date.parse(instant), timeZone)).toBe(wallTime);
});

test('a clock in no zone shows nothing', () => {
  expect(() => wallTimeInZone(0, 'Nowhere/Here')).toThrow(AssertionError);
  expect(() => wallTimeInZone(Number.NaN, 'UTC')).toThrow(AssertionError);
});
