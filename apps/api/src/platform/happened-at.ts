import { fieldProblem } from './problem.ts';

type Said = { readonly field: string; readonly at: string | undefined };

/** When something was done in the hall: now, or as it was written down. What is still to come has not been done. */
export function happenedAt(now: Date, said: Said): Date {
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

/** The same of what is over: what a phone that runs ahead wrote was done now. */
export function happenedByNow(now: Date, said: Said): Date {
  const at = happenedAt(now, said);
  return at < now ? at : now;
}
