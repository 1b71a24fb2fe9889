import { pouredPerHour } from '@sheafbook/packing';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { Answer, Glance as Answers } from '../../ui/glance.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { type Watch, watchQuery } from '../seam/queries.ts';
import { Scrap } from './glance-more.tsx';
import { Poured, Rest, Suspects } from './glance-running.tsx';
import { useGlanceText } from './glance-words.ts';
import { type LogBody, logQuery, type SessionFacts } from './queries.ts';
import { usePackingText } from './words.ts';

/** What the last day at the line left: until the next one runs, its questions 6 to 10 are answered by it. */
export function PastDay({ session }: { session: SessionFacts }) {
  const t = useGlanceText();
  const words = usePackingText();
  const { storehouse } = useHouse();
  const param = { storehouse, session: session.id };
  const reading = joined(useQuery(logQuery(param)), useQuery(watchQuery(param)));
  return (
    <section className="stack">
      <h2>{t.pastDay(session.name)}</h2>
      <Loaded reading={reading}>
        {([body, watch]) => (
          <Answers>
            <Poured body={body} />
            <Checked watch={watch} />
            <Suspects windows={watch.windows} />
            <Rest body={body} />
            <Rate body={body} />
            <Scrap body={body} />
          </Answers>
        )}
      </Loaded>
      <div className="actions">
        <Link className="btn" to="/s/$storehouse/packing/$session/log" params={param}>
          {words.toLog}
        </Link>
        <Link className="btn" to="/s/$storehouse/packing/$session/seals" params={param}>
          {words.toSeals}
        </Link>
      </div>
    </section>
  );
}

/** Question 7, of a day that is over: the last check of each machine that closed something. */
function Checked({ watch: { checks, machines } }: { watch: Watch }) {
  const t = useGlanceText();
  const { format } = useHouse();
  const last = machines.flatMap((machine) => {
    const own = checks.filter(({ machineId }) => machineId === machine.id);
    const check = own.toSorted((a, b) => Date.parse(b.checkedAt) - Date.parse(a.checkedAt))[0];
    return check ? [{ machine, check }] : [];
  });
  return (
    <Answer ask={t.seamer}>
      {last.length === 0 ? t.unchecked : null}
      {last.map(({ machine, check }) => (
        <span key={machine.id} className="block">
          {machine.outSince === null ? (
            <State
              kind={check.passed ? 'well' : 'wrong'}
              word={(check.passed ? t.passed : t.failed)(machine.name, format.instant(check.checkedAt))}
            />
          ) : (
            <State kind="wrong" word={t.stopped(machine.name)} />
          )}
        </span>
      ))}
    </Answer>
  );
}

/** Question 17. */
function Rate({ body }: { body: LogBody }) {
  const t = useGlanceText();
  const { format } = useHouse();
  const standing = body.pours.filter(({ isUndone }) => !isUndone);
  const rate = pouredPerHour(standing.map(({ pouredAt }) => Date.parse(pouredAt)));
  return (
    <Answer ask={t.rate}>
      {rate === null ? t.noRate(standing.length) : t.rateOf(format.count(rate), standing.length)}
    </Answer>
  );
}
