import { ApiProblem } from '../api/problem.ts';
import type { Catalogue } from '../text/en/core.ts';
import { useTaste, useText } from '../text/taste.ts';

/** The catalogue knows a refusal in both languages; what it doesn't know is said in the server's own words. */
export function sayProblem(t: Catalogue, error: Error, language: string): string {
  if (!(error instanceof ApiProblem)) return t.problems.unexpected ?? '';
  const known = t.problems[error.code];
  return language === 'en' && error.code !== 'offline' ? error.message : (known ?? error.message);
}

export function ProblemSaid({ error }: { error: Error | null }) {
  const t = useText();
  const { language } = useTaste();
  return (
    <div role="alert" aria-live="assertive">
      {error ? <p className="said">{sayProblem(t, error, language)}</p> : null}
    </div>
  );
}
