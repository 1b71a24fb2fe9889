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

/** Each browser says in its own words that a part of the app could not be fetched: they speak of importing, or of CSS. */
const isUnreached = (error: unknown) =>
  (error instanceof TypeError && /import/i.test(error.message)) ||
  (error instanceof Error && /^Unable to preload CSS/.test(error.message));

/** A page that stumbled says so, and offers to be read again. */
export function Stumbled({ error }: { error: unknown }) {
  const t = useText();
  const title = isUnreached(error) ? t.unreachedTitle : t.stumbledTitle;
  useTitle(title);
  return (
    <div className="shell door">
      <div className="weave" />
      <main className="body">
        <h1>{title}</h1>
        {isUnreached(error) ? (
          <p>{t.unreachedWords}</p>
        ) : (
          <ProblemSaid error={error instanceof Error ? error : null} />
        )}
        <div className="actions">
          <button type="button" className="btn go" onClick={() => location.reload()}>
            {t.tryAgain}
          </button>
          <Link to="/" className="btn">
            {t.toHome}
          </Link>
        </div>
      </main>
    </div>
  );
}
