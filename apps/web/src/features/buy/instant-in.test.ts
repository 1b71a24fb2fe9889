import { expect, test } from 'vitest';
import { instantIn, wallTimeIn } from './instant-in.ts';

test.for([
  ['America/Chicago', '2026-10-16T23:00', '2026-10-17T04:00:00.000Z'], // summer time, UTC − 5
  ['America/Chicago', '2027-01-08T23:00', '2027-01-09T05:00:00.000Z'], // winter time, UTC − 6
  ['Europe/Madrid', '2026-10-25T12:00', '2026-10-25T11:00:00.000Z'], // the day on which clocks go back
])('in %s, %s on the wall is %s, and back', ([zone = '', wall = '', instant = '']) => {
  expect(instantIn(zone, wall)).toBe(instant);
  const { day, time } = wallTimeIn(zone, instant);
  expect(`${day}T${time}`).toBe(wall);
});
