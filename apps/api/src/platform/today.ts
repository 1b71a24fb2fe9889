import { dayInZone } from '@sheafbook/units';
import type { Context } from './context.ts';
import { fieldProblem } from './problem.ts';

/** Today on the wall of the storehouse. */
export const todayOf = ({ actor, now }: Context): string => dayInZone(now().getTime(), actor.timeZone);

/** What is booked has happened: a day that is still to come is a slip of the pen. */
export function refuseFutureDay(context: Context, day: { field: string; on: string }): void {
  if (day.on > todayOf(context))
    throw fieldProblem('invalid-input', day.field, 'This day is still to come; what is booked has happened.');
}
