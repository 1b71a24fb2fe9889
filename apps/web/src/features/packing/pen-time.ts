import { instantOfWallTime, isWallTime, wallTimeInZone } from '@sheafbook/units';

/** The day that it is at a moment on the wall of the storehouse. */
export const dayThere = (atMs: number, timeZone: string): string =>
  wallTimeInZone(atMs, timeZone).slice(0, 10);

/** When a pen wrote something, on the wall of the storehouse, today or on a day; null where it says no time of a day. */
export function penTime(pen: string, timeZone: string, day: string = dayThere(Date.now(), timeZone)) {
  const wall = `${day}T${pen}`;
  const penAt = isWallTime(wall) ? new Date(instantOfWallTime(wall, timeZone)) : null;
  return { penAt, isAhead: penAt !== null && penAt.getTime() > Date.now() };
}
