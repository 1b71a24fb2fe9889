import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { ApiProblem, isLastWord } from '../api/problem.ts';
import { useText } from '../text/taste.ts';
import { ProblemSaid } from './problem-said.tsx';

type Reading<Data> = {
  readonly data: Data | undefined;
  readonly error: Error | null;
  readonly refetch: () => unknown;
};

/** Every list's four states in one place: waiting, refused, without a signal, and there. */
export function Loaded<Data>({
  reading,
  isPage = false,
  children,
}: {
  reading: Reading<Data>;
  /** The page's own heading is drawn from what is read: where nothing is there, the page has to get one here. */
  isPage?: boolean;
  children: (data: Data) => ReactNode;
}) {
  const t = useText();
  const { data, error, refetch } = reading;
  if (data !== undefined)
    return (
      <>
        {error instanceof ApiProblem && error.code === 'offline' ? (
          <p className="said watch-said">{t.offlineOld}</p>
        ) : null}
        {children(data)}
      </>
    );
  if (!error)
    return (
      <p className="wait" role="status">
        {t.loading}
      </p>
    );
  return (
    <div className="empty">
      {isPage && error instanceof ApiProblem && error.status === 404 ? <NotThere /> : null}
      <ProblemSaid error={error} />
      {error instanceof ApiProblem && isLastWord(error.status) ? null : (
        <button type="button" className="btn" onClick={() => refetch()}>
          {t.tryAgain}
        </button>
      )}
    </div>
  );
}

/** A page whose very thing is not there gets its heading in plain words, and the way home. */
function NotThere() {
  const t = useText();
  return (
    <>
      <h1>{t.lostTitle}</h1>
      <Link to="/" className="btn">
        {t.toHome}
      </Link>
    </>
  );
}

/** Several readings that a page needs together. */
export function joined<A, B>(a: Reading<A>, b: Reading<B>): Reading<[A, B]> {
  return {
    data: a.data === undefined || b.data === undefined ? undefined : [a.data, b.data],
    error: a.error ?? b.error,
    refetch: () => [a.refetch(), b.refetch()],
  };
}
