/** The instant of a wall clock's time at the storehouse, whatever zone the phone is in. */
export function instantIn(timeZone: string, wallTime: string): string {
  const wished = Date.parse(`${wallTime}:00Z`);
  // Twice, since the first guess may lie on the other side of a change of clocks.
  const first = wished - offsetAt(timeZone, wished);
  return new Date(wished - offsetAt(timeZone, first)).toISOString();
}

function offsetAt(timeZone: string, at: number): number {
  const parts = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'medium' });
  return Date.parse(`${parts.format(new Date(at)).replace(' ', 'T')}Z`) - at;
}

/** Day and hour of an instant on the storehouse's own clock, as a form takes them. */
export function wallTimeIn(timeZone: string, instant: string): { day: string; time: string } {
  const parts = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short' });
  const [day = '', time = ''] = parts.format(new Date(instant)).split(' ');
  return { day, time };
}
