import { ABSORBER_WINDOW, containersPerOneLost, saidFinish } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { useNamed } from '../../ui/use-named.ts';
import { watchQuery } from '../seam/queries.ts';
import { shoppingQuery } from '../supplies/queries.ts';
import { Answer } from './glance-answer.tsx';
import { NotHere, OnTheLine, Ready } from './glance-more.tsx';
import { useGlanceText } from './glance-words.ts';
import {
  type LogBody,
  logQuery,
  type OfSession,
  type PlanBody,
  planQuery,
  type SessionFacts,
} from './queries.ts';
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
          <dl className="glance">
            <Planned plan={body} />
            <Supplies param={param} />
            <Ready plan={body} param={param} />
            {session.stage === 'running' ? <NotHere plan={body} /> : null}
            {session.stage === 'running' ? <Running param={param} plan={body} /> : null}
          </dl>
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

/** Questions 6 to 10, once the line runs. */
function Running({ param, plan }: { param: OfSession; plan: PlanBody }) {
  const log = useQuery(logQuery(param));
  return (
    <>
      {log.data ? <Poured body={log.data} /> : null}
      <Seals param={param} />
      {log.data ? <Rest body={log.data} /> : null}
      {log.data ? <OnTheLine body={log.data} plan={plan} /> : null}
    </>
  );
}

function Poured({ body }: { body: LogBody }) {
  const t = useGlanceText();
  const words = usePackingText();
  const { format } = useHouse();
  const standing = body.pours.filter(({ isUndone }) => !isUndone);
  const last = standing.at(-1);
  const over = sumOf(standing.map(({ grams, targetGrams }) => grams - targetGrams));
  const lost = last ? containersPerOneLost(last.targetGrams, Math.round(over / standing.length)) : null;
  const isOver = over > 0;
  return (
    <Answer ask={t.overPour}>
      {isOver
        ? `${words.overBy(format.count(over), standing.length)} ${lost === null ? '' : words.oneGiven(format.count(lost))}`
        : over < 0
          ? t.under(format.count(-over), standing.length)
          : t.onTarget}
    </Answer>
  );
}

function Seals({ param }: { param: OfSession }) {
  const t = useGlanceText();
  const { data } = useQuery(watchQuery(param));
  if (!data) return null;
  const doubts = data.windows
    .map(({ check, suspects }) => ({
      check,
      open: suspects.filter(({ disposition }) => disposition === null),
    }))
    .filter(({ open }) => open.length > 0);
  return (
    <>
      <Answer ask={t.seamer}>
        {data.lines.length === 0 ? t.noMachine : null}
        {data.lines.map(({ line, machine, why, closedSince, containersLeft, minutesLeft }) => (
          <span key={`${line} ${machine.id}`} className="block">
            {machine.outSince !== null ? (
              <State kind="wrong" word={t.stopped(machine.name)} />
            ) : why === null ? (
              <State kind="well" word={t.good(machine.name, closedSince, containersLeft, minutesLeft)} />
            ) : (
              <State kind="watch" word={t.due(machine.name)} />
            )}
          </span>
        ))}
      </Answer>
      <Answer ask={t.suspects}>
        {doubts.length === 0 ? <State kind="well" word={t.none} /> : null}
        {doubts.map(({ check, open }) => (
          <span key={check.id} className="block">
            <State
              kind="wrong"
              word={t.inDoubt(check.line, open[0]?.serial ?? 0, open.at(-1)?.serial ?? 0, open.length)}
            />
          </span>
        ))}
      </Answer>
    </>
  );
}

/** Questions 9 and 10. */
function Rest({ body }: { body: LogBody }) {
  const t = useGlanceText();
  const words = usePackingText();
  const { format } = useHouse();
  const open = body.packs.findLast(({ shutAt }) => shutAt === null);
  const { unaccountedGrams } = body.mass;
  const shutBy = (openedAt: string) =>
    format.hour(new Date(Date.parse(openedAt) + ABSORBER_WINDOW.windowSeconds * 1000).toISOString());
  return (
    <>
      <Answer ask={t.pack}>{open ? t.packBy(shutBy(open.openedAt), open.packets) : t.noPack}</Answer>
      <Answer ask={t.mass}>
        {unaccountedGrams === 0 ? (
          <State kind="well" word={words.balances} />
        ) : (
          <State
            kind="watch"
            word={words.missing(format.count(Math.abs(unaccountedGrams)), unaccountedGrams > 0)}
          />
        )}
      </Answer>
    </>
  );
}
