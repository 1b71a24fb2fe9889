import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { instantOfWallTime, isWallTime, listRepeatedHours, wallTimeInZone } from './wall-time.ts';

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

test.for([
  // As the IANA time zone database has them; Lord Howe goes back by half an hour, and in April.
  { timeZone: 'America/Chicago', year: 2026, hours: [['2026-11-01 01:00:00', '2026-11-01 02:00:00']] },
  { timeZone: 'Europe/Madrid', year: 2025, hours: [['2025-10-26 02:00:00', '2025-10-26 03:00:00']] },
  { timeZone: 'Australia/Lord_Howe', year: 2025, hours: [['2025-04-06 01:30:00', '2025-04-06 02:00:00']] },
  { timeZone: 'America/Phoenix', year: 2026, hours: [] },
])('the hours that a wall of $timeZone shows twice in $year are found', ({ timeZone, year, hours }) => {
  expect(listRepeatedHours(year, timeZone).map(({ fromAt, toAt }) => [fromAt, toAt])).toEqual(hours);
});

test('repeated hours are of a year of a known zone', () => {
  expect(() => listRepeatedHours(0, 'UTC')).toThrow(AssertionError);
  expect(() => listRepeatedHours(2026.5, 'UTC')).toThrow(AssertionError);
  expect(() => listRepeatedHours(2026, 'Nowhere/Atall')).toThrow(AssertionError);
});
