import { ApiProblem } from '../api/problem.ts';
import type { Catalogue } from '../text/en/core.ts';
import { useText } from '../text/taste.ts';

/** The server speaks the reader's language; what no server said is said here. */
export function sayProblem(t: Catalogue, error: Error): string {
  if (!(error instanceof ApiProblem)) return t.problems.unexpected ?? '';
  return t.problems[error.code] ?? error.message;
}

export function ProblemSaid({ error }: { error: Error | null }) {
  const t = useText();
  return (
    <div role="alert" aria-live="assertive">
      {error ? <p className="said">{sayProblem(t, error)}</p> : null}
    </div>
  );
}
