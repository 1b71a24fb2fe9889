import { runningFinish, saidFinish } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { Answer, Glance as Answers } from '../../ui/glance.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { useNamed } from '../../ui/use-named.ts';
import { shoppingQuery } from '../supplies/queries.ts';
import { Spoiling } from '../supplies/spoiling.tsx';
import { NotHere, Ready } from './glance-more.tsx';
import { Running } from './glance-running.tsx';
import { useGlanceText } from './glance-words.ts';
import { Jam } from './jam.tsx';
import { logQuery, type OfSession, type PlanBody, planQuery, type SessionFacts } from './queries.ts';
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
            {session.stage === 'running' ? (
              <RunsUntil plan={body} param={param} />
            ) : (
              <Finish plan={body} behind={null} />
            )}
            <Planned plan={body} runs={session.stage === 'running' ? param : null} />
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

type FinishProps = {
  plan: PlanBody;
  /** While it runs: when each line will be done, in seconds from the planned start, as it goes. */
  behind: readonly (number | null)[] | null;
};

/** Question 1. */
function Finish({ plan: { session, lines }, behind }: FinishProps) {
  const t = useGlanceText();
  const { format } = useHouse();
  const busy = lines.filter(({ containers }) => containers > 0);
  const containers = format.count(sumOf(busy.map((line) => line.containers)));
  const lastOf = (ends: readonly (number | null)[]) =>
    saidFinish(Math.max(0, ...ends.map((end) => end ?? 0)));
  const planned = lastOf(busy.map(({ finishSeconds }) => finishSeconds));
  const hourOf = (seconds: number) =>
    format.hour(new Date(Date.parse(session.startsAt) + seconds * 1000).toISOString());
  if (busy.length === 0) return <Answer ask={t.finish}>{t.nothing}</Answer>;
  if (busy.some(({ finishSeconds }) => finishSeconds === null))
    return <Answer ask={t.finish}>{t.tooFew}</Answer>;
  const now = behind === null ? planned : lastOf(behind);
  return (
    <Answer ask={t.finish}>
      {now > planned ? (
        <State
          kind="watch"
          word={t.finishBehind(hourOf(now), hourOf(planned), format.count((now - planned) / 60))}
        />
      ) : (
        t.finishAt(hourOf(planned), containers)
      )}
    </Answer>
  );
}

/** Question 1 of a day that runs: by what each line has closed and when, beside its plan. */
function RunsUntil({ plan, param }: { plan: PlanBody; param: OfSession }) {
  const { data: log } = useQuery(logQuery(param));
  if (!log) return <Finish plan={plan} behind={null} />;
  const secondOf = (at: number) => (at - Date.parse(plan.session.startsAt)) / 1000;
  const behind = plan.lines.map((line, at) =>
    runningFinish(
      {
        ...line,
        closedAtSeconds: log.pours
          .filter((pour) => pour.line === at + 1 && !pour.isUndone)
          .map(({ pouredAt }) => secondOf(Date.parse(pouredAt)))
          .toSorted((a, b) => a - b),
      },
      secondOf(Date.now()),
    ),
  );
  return <Finish plan={plan} behind={behind} />;
}

/** Questions 2, 3 and 5: the hands, the jam and the order. */
function Planned({ plan, runs }: { plan: PlanBody; runs: OfSession | null }) {
  const t = useGlanceText();
  const words = usePackingText();
  const { format } = useHouse();
  const nameOf = useNamed();
  const { lines, crew } = plan;
  const busy = lines.filter(({ containers }) => containers > 0);
  const percent = format.count(Math.round(crew.chance * 100));
  return (
    <>
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
      {lines.map((line, at) =>
        line.containers === 0 || line.cycleSeconds === null ? null : (
          <Answer key={line.runs[0]?.wishId} ask={t.bottleneck}>
            <Jam {...{ line, lineNo: at + 1, runs }} />
          </Answer>
        ),
      )}
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
      <Spoiling supplies={data.lines.map(({ supply }) => supply)} />
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
