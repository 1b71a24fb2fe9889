import { ABSORBER_WINDOW, containersPerOneLost } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Answer } from '../../ui/glance.tsx';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { isToReCan, type Watch, watchQuery } from '../seam/queries.ts';
import { CleanDownAnswer, OnTheLine } from './glance-more.tsx';
import { useGlanceText } from './glance-words.ts';
import { MassState } from './mass-state.tsx';
import { type LogBody, logQuery, type OfSession, type PlanBody } from './queries.ts';
import { usePackingText } from './words.ts';

/** Questions 6 to 10, once the line runs. */
export function Running({ param, plan }: { param: OfSession; plan: PlanBody }) {
  const log = useQuery(logQuery(param));
  return (
    <>
      {log.data ? <Poured body={log.data} /> : null}
      <Seals param={param} />
      {log.data ? <Rest body={log.data} /> : null}
      {log.data ? <OnTheLine body={log.data} plan={plan} /> : null}
      <CleanDownAnswer {...param} />
    </>
  );
}

export function Poured({ body }: { body: LogBody }) {
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
  return (
    <>
      <Answer ask={t.seamer}>
        {data.lines.length === 0 ? t.noMachine : null}
        {data.lines.map(({ line, machine, why, closedSince, containersLeft, minutesLeft }) => (
          <span key={`${line} ${machine.id}`} className="block">
            {machine.outSince !== null ? (
              <State kind="wrong" word={t.stopped(machine.name)} />
            ) : why === null ? (
              <State
                kind="well"
                word={
                  minutesLeft === 0
                    ? t.nextOne(machine.name)
                    : t.good(machine.name, closedSince, containersLeft, minutesLeft)
                }
              />
            ) : (
              <State kind="watch" word={t.due(machine.name)} />
            )}
          </span>
        ))}
      </Answer>
      <Suspects windows={data.windows} />
    </>
  );
}

/** Question 8: what was closed since the last good check of a machine that failed one, as far as nothing was decided yet. */
export function Suspects({ windows }: { windows: Watch['windows'] }) {
  const t = useGlanceText();
  const doubts = windows
    .map(({ check, suspects }) => ({
      check,
      open: suspects.filter(({ disposition }) => disposition === null),
    }))
    .filter(({ open }) => open.length > 0);
  const toReCan = windows.flatMap(({ suspects }) => suspects.filter(isToReCan)).length;
  const settled =
    toReCan > 0 ? <State kind="watch" word={t.toReCan(toReCan)} /> : <State kind="well" word={t.none} />;
  return (
    <Answer ask={t.suspects}>
      {doubts.length === 0 ? settled : null}
      {doubts.map(({ check, open }) => (
        <span key={check.id} className="block">
          <State
            kind="wrong"
            word={t.inDoubt(check.line, open[0]?.serial ?? 0, open.at(-1)?.serial ?? 0, open.length)}
          />
        </span>
      ))}
    </Answer>
  );
}

/** Questions 9 and 10. */
export function Rest({ body }: { body: LogBody }) {
  const t = useGlanceText();
  const { format } = useHouse();
  const open = body.packs.findLast(({ shutAt }) => shutAt === null);
  const shutBy = (openedAt: string) =>
    format.hour(new Date(Date.parse(openedAt) + ABSORBER_WINDOW.windowSeconds * 1000).toISOString());
  return (
    <>
      <Answer ask={t.pack}>{open ? t.packBy(shutBy(open.openedAt), open.packets) : t.noPack}</Answer>
      <Answer ask={t.mass}>
        <MassState body={body} />
      </Answer>
    </>
  );
}
