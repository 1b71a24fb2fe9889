import { saidFinish } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { Answer, Glance as Answers } from '../../ui/glance.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { useNamed } from '../../ui/use-named.ts';
import { shoppingQuery } from '../supplies/queries.ts';
import { NotHere, Ready } from './glance-more.tsx';
import { Running } from './glance-running.tsx';
import { useGlanceText } from './glance-words.ts';
import { type OfSession, type PlanBody, planQuery, type SessionFacts } from './queries.ts';
import { usePackingText } from './words.ts';

/** What whoever leads packing asks of the day that comes or runs, answered without a search: each leads to where it is worked at. */
export function Glance({ session }: { session: SessionFacts }) {
  const t = useGlanceText();
  const words = usePackingText();
  const { storehouse } = useHouse();
  const param = { storehouse, session: session.id };
  const plan = useQuery(planQuery(param));
  return (
    <section className="stack">
      <h2>{t.title}</h2>
      <Loaded reading={plan}>
        {(body) => (
          <Answers>
            <Planned plan={body} />
            <Supplies param={param} />
            <Ready plan={body} param={param} />
            {session.stage === 'running' ? <NotHere plan={body} /> : null}
            {session.stage === 'running' ? <Running param={param} plan={body} /> : null}
          </Answers>
        )}
      </Loaded>
      <div className="actions">
        <Link className="btn" to="/s/$storehouse/packing/$session/plan" params={param}>
          {words.toPlan}
        </Link>
        {session.stage === 'running' ? (
          <>
            <Link className="btn go" to="/s/$storehouse/packing/$session/log" params={param}>
              {words.toLog}
            </Link>
            <Link className="btn" to="/s/$storehouse/packing/$session/seals" params={param}>
              {words.toSeals}
            </Link>
          </>
        ) : null}
      </div>
    </section>
  );
}

/** Questions 1, 2, 3 and 5: the end, the hands, the jam and the order. */
function Planned({ plan }: { plan: PlanBody }) {
  const t = useGlanceText();
  const words = usePackingText();
  const { format } = useHouse();
  const nameOf = useNamed();
  const { session, lines, crew } = plan;
  const busy = lines.filter(({ containers }) => containers > 0);
  const crewed = busy.filter(({ cycleSeconds }) => cycleSeconds !== null);
  const finish = Math.max(0, ...busy.map(({ finishSeconds }) => finishSeconds ?? 0));
  const endsAt = new Date(Date.parse(session.startsAt) + saidFinish(finish) * 1000).toISOString();
  const containers = sumOf(busy.map((line) => line.containers));
  const isShort = busy.some(({ finishSeconds }) => finishSeconds === null);
  const percent = format.count(Math.round(crew.chance * 100));
  return (
    <>
      <Answer ask={t.finish}>
        {busy.length === 0
          ? t.nothing
          : isShort
            ? t.tooFew
            : t.finishAt(format.hour(endsAt), format.count(containers))}
      </Answer>
      <Answer ask={t.people}>
        <State
          kind={crew.moreToAsk === 0 ? 'well' : 'watch'}
          word={
            crew.moreToAsk === 0
              ? words.enough(crew.wanted, percent)
              : words.askMore(crew.moreToAsk, crew.wanted, percent)
          }
        />
      </Answer>
      {crewed.map((line) => (
        <Answer key={line.runs[0]?.wishId} ask={t.bottleneck}>
          {t.sets(
            line.bottleneck
              .map((name) => words.stations[name as keyof typeof words.stations] ?? name)
              .join(', '),
            format.count(Math.round(line.cycleSeconds ?? 0)),
          )}
        </Answer>
      ))}
      {busy.map((line) => (
        <Answer key={line.runs[0]?.wishId} ask={t.order}>
          {[...new Set(line.runs.map(({ food }) => nameOf(food)))].join(' → ')}
        </Answer>
      ))}
    </>
  );
}

/** Question 4. */
function Supplies({ param }: { param: OfSession }) {
  const t = useGlanceText();
  const { format } = useHouse();
  const { data } = useQuery(shoppingQuery(param));
  if (!data) return null;
  const short = [
    ...data.lines
      .filter(({ shortPieces }) => shortPieces > 0)
      .map(({ supply, shortPieces }) => t.short(supply.name, format.count(shortPieces))),
    ...(data.unkept.length > 0 ? [t.unkept(data.unkept.length)] : []),
  ];
  return (
    <Answer ask={t.supplies}>
      {short.length === 0 ? (
        <State kind="well" word={t.allThere} />
      ) : (
        <Link to="/s/$storehouse/packing/$session/shopping" params={param}>
          {short.join('; ')}
        </Link>
      )}
    </Answer>
  );
}
