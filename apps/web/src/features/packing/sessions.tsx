import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { Glance } from './glance.tsx';
import { PastDay } from './glance-past.tsx';
import { type SessionFacts, sessionsQuery } from './queries.ts';
import { usePackingText } from './words.ts';
import './packing.css';

/** Packing days: the next one in a sentence, then all of them. */
export function Sessions() {
  const t = usePackingText();
  const { storehouse, duties, format } = useHouse();
  useTitle(t.packing);
  const reading = useQuery(sessionsQuery({ storehouse }));
  const mayOpen = duties.includes('packing_lead') || duties.includes('coordinator');
  return (
    <Loaded isPage reading={reading}>
      {({ sessions }) => {
        const next = nextOf(sessions);
        const past = next?.stage === 'running' ? undefined : lastOf(sessions);
        return (
          <>
            <h1>{next ? t.nextDay(next.name, format.instant(next.startsAt)) : t.noDay}</h1>
            {mayOpen ? (
              <div className="actions">
                <Link
                  className={next ? 'btn' : 'btn go'}
                  to="/s/$storehouse/packing/open"
                  params={{ storehouse }}
                >
                  {t.open}
                </Link>
                <Link className="btn" to="/s/$storehouse/packing/machines" params={{ storehouse }}>
                  {t.toMachines}
                </Link>
              </div>
            ) : null}
            {mayOpen && next ? <Glance session={next} /> : null}
            {mayOpen && past ? <PastDay session={past} /> : null}
            <ul className="list">
              {sessions.map(({ id, name, startsAt, place, stage }) => (
                <li key={id}>
                  <Link to="/s/$storehouse/packing/$session" params={{ storehouse, session: id }}>
                    <span>
                      <b>{name}</b>
                      <span className="soft block">
                        {[format.instant(startsAt), place].filter(Boolean).join(' · ')}
                      </span>
                    </span>
                    <span className="soft">{t.stages[stage as keyof typeof t.stages]}</span>
                  </Link>
                </li>
              ))}
            </ul>
          </>
        );
      }}
    </Loaded>
  );
}

/** The running one, or the first that is still to come. */
function nextOf(sessions: readonly SessionFacts[]): SessionFacts | undefined {
  const alive = sessions.filter(({ stage }) => stage === 'open' || stage === 'running');
  const [first] = alive.toSorted((a, b) => Date.parse(a.startsAt) - Date.parse(b.startsAt));
  return alive.find(({ stage }) => stage === 'running') ?? first;
}

/** The newest that was run and whose mass was signed. */
const lastOf = (sessions: readonly SessionFacts[]): SessionFacts | undefined =>
  sessions
    .filter(({ stage }) => stage === 'signed' || stage === 'settled')
    .toSorted((a, b) => Date.parse(b.startsAt) - Date.parse(a.startsAt))[0];
