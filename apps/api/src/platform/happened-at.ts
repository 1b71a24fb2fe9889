import type { Context } from './context.ts';
import { fieldProblem } from './problem.ts';

/** When something was done in the hall: now, or as it was written down. What is still to come has not been done. */
export function happenedAt(context: Context, said: { field: string; at: string | undefined }): Date {
  const now = context.now();
  const at = said.at === undefined ? now : new Date(said.at);
  // A phone's clock may run a little ahead of ours.
  if (at.getTime() > now.getTime() + 300_000)
    throw fieldProblem(
      'invalid-input',
      said.field,
      'This time is still to come. Set the clock of the phone.',
    );
  return at;
}
