import { Link } from '@tanstack/react-router';
import { useText } from '../text/taste.ts';
import { ProblemSaid } from './problem-said.tsx';
import { useTitle } from './use-title.ts';

export function Lost() {
  const t = useText();
  useTitle(t.lostTitle);
  return (
    <div className="shell door">
      <div className="weave" />
      <main className="body">
        <h1>{t.lostTitle}</h1>
        <p>{t.lostWords}</p>
        <Link to="/" className="btn go">
          {t.toHome}
        </Link>
      </main>
    </div>
  );
}

/** A page that stumbled says so, and offers to be read again. */
export function Stumbled({ error }: { error: unknown }) {
  const t = useText();
  return (
    <div className="shell door">
      <div className="weave" />
      <main className="body">
        <h1>{t.stumbledTitle}</h1>
        <ProblemSaid error={error instanceof Error ? error : null} />
        <button type="button" className="btn go" onClick={() => location.reload()}>
          {t.tryAgain}
        </button>
      </main>
    </div>
  );
}
