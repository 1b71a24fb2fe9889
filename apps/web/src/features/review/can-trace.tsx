import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { InferResponseType } from 'hono/client';
import { useState } from 'react';
import type { api } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { tracesQuery } from './queries.ts';
import { useReviewText } from './words.ts';

type Audit = InferResponseType<(typeof api.storehouses)[':storehouse']['audit']['$get'], 200>;

/**
 * Whether what stands on the shelves leads back to where it came from: all of it by the audit, and ten of it in full, drawn
 * by the day. They are drawn when asked for, since each household whose container is drawn is told that somebody looked.
 */
export function CanTrace({ audit }: { audit: Audit }) {
  const t = useReviewText();
  const { storehouse, format } = useHouse();
  const seed = format.today();
  const [isDrawn, setDrawn] = useState(false);
  const reading = useQuery(tracesQuery({ storehouse }, isDrawn ? seed : ''));
  const lineage = audit.findings.find(({ key }) => key === 'lineage');
  return (
    <section className="stack">
      <h2>{t.canTrace}</h2>
      {lineage === undefined ? null : (
        <p>
          <State
            kind={lineage.holds ? 'well' : 'wrong'}
            word={lineage.holds ? t.allReachOrigin : t.notAllReachOrigin}
          />{' '}
          <span className="soft">{lineage.figure}</span>
        </p>
      )}
      {isDrawn ? (
        <Loaded reading={reading}>
          {({ traces, candidates }) => (
            <>
              <p>{t.drawnFrom(traces.length, candidates)}</p>
              <ul>
                {traces.map((trace) => (
                  <li key={trace.code} className="row place">
                    <Link to="/s/$storehouse/books/traces" params={{ storehouse }} search={{ seed }}>
                      {trace.code}
                    </Link>
                    <Traced trace={trace} />
                  </li>
                ))}
              </ul>
            </>
          )}
        </Loaded>
      ) : (
        <>
          <p className="soft">{t.drawTells}</p>
          <div>
            <button type="button" className="btn" onClick={() => setDrawn(true)}>
              {t.drawToday(format.day(seed))}
            </button>
          </div>
        </>
      )}
    </section>
  );
}

type Trace = Exclude<
  InferResponseType<(typeof api.storehouses)[':storehouse']['traces']['$get'], 200>,
  string
>['traces'][number];

function Traced({ trace }: { trace: Trace }) {
  const t = useReviewText();
  if (trace.kind === 'entry')
    return trace.entry === null ? (
      <span className="soft">{t.entryHidden}</span>
    ) : (
      <State kind="well" word={t.tracedEntry(trace.entry.movements.length)} />
    );
  if (trace.addsUp === null) return <State kind="well" word={t.endsAtHome} />;
  return <State kind={trace.addsUp ? 'well' : 'wrong'} word={trace.addsUp ? t.addsUp : t.doesNotAddUp} />;
}
