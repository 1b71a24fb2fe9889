import { instantOfWallTime, wallTimeInZone } from '@sheafbook/units';

/** The instant of a wall clock's time at the storehouse, whatever zone the phone is in. */
export const instantIn = (timeZone: string, wallTime: string): string =>
  new Date(instantOfWallTime(wallTime, timeZone)).toISOString();

/** Day and hour of an instant on the storehouse's own clock, as a form takes them. */
export function wallTimeIn(timeZone: string, instant: string): { day: string; time: string } {
  const [day = '', time = ''] = wallTimeInZone(Date.parse(instant), timeZone).split('T');
  return { day, time };
}
