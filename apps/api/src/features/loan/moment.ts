import type { Context } from '../../platform/context.ts';
import { happenedByNow } from '../../platform/happened-at.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { mayTakeMoney } from './policy.ts';

/** How long a borrower's own word of an hour is taken. Source: common practice, no source. */
const BORROWER_MS = 24 * 3_600_000;

/**
 * When something happened at the shed door, as the phone wrote it down: never to come, and never before what went before.
 * What is older than a day takes the keeper, so that nobody talks a late fee away.
 */
export function momentOf(context: Context, said: string | undefined, since: Date): Date {
  const now = context.now();
  const at = happenedByNow(now, { field: 'happenedAt', at: said });
  if (said === undefined) return at;
  if (at < since)
    throw fieldProblem('invalid-input', 'happenedAt', 'This was before it was booked or went out.');
  if (at.getTime() < now.getTime() - BORROWER_MS && !mayTakeMoney(context.actor))
    throw fieldProblem('duty-missing', 'happenedAt', 'What is older than a day the keeper writes down.');
  return at;
}
