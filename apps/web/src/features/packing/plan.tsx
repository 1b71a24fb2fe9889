import { saidFinish } from '@sheafbook/packing';
import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import type { Waiting } from '../../api/outbox.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger, NextStep } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { ScaleWarning } from '../scale/scales-of-day.tsx';
import { SpoilingOfDay } from '../supplies/spoiling.tsx';
import { LineClock } from './line-clock.tsx';
import type { LogAct } from './log-act.ts';
import { MixedRun } from './mixed-run.tsx';
import { type LinePlan, type PlanBody, planQuery } from './queries.ts';
import { StandWhere } from './stand-where.tsx';
import { Times } from './times.tsx';
import { useLogQueue } from './use-log.ts';
import { usePackingText } from './words.ts';
import './packing.css';

/** The whole day for who leads it: when it ends, where it jams, and what one person more would buy. */
export function Plan() {
  const { session } = useParams({ from: '/s/$storehouse/packing/$session/plan' });
  const { storehouse } = useHouse();
  const [people, setPeople] = useState<number>();
  const reading = useQuery(planQuery({ storehouse, session }, people));
  return (
    <Loaded isPage reading={reading}>
      {(plan) => <PlanPage plan={plan} people={people ?? plan.session.peopleALine} onPeople={setPeople} />}
    </Loaded>
  );
}

type PlanProps = { plan: PlanBody; people: number; onPeople: (people: number) => void };

function PlanPage({ plan, people, onPeople }: PlanProps) {
  const t = usePackingText();
  const { storehouse, format } = useHouse();
  const { session, lines } = plan;
  useTitle(`${session.name}: ${t.plan}`);
  const finish = Math.max(0, ...lines.map(({ finishSeconds }) => finishSeconds ?? 0));
  const containers = lines.reduce((sum, line) => sum + line.containers, 0);
  const isShort = lines.some((line) => line.containers > 0 && line.finishSeconds === null);
  const endsAt = new Date(Date.parse(session.startsAt) + saidFinish(finish) * 1000).toISOString();
  return (
    <>
      <Link className="who" to="/s/$storehouse/packing/$session" params={{ storehouse, session: session.id }}>
        <BackIcon />
        {session.name}
      </Link>
      <h1>
        {containers === 0
          ? t.nothingWished
          : isShort
            ? t.tooFew(people)
            : t.ends(format.count(containers), format.hour(endsAt))}
      </h1>
      <div className="stepper">
        <button
          type="button"
          className="btn"
          aria-label={t.onePersonLess}
          disabled={people <= 1}
          onClick={() => onPeople(people - 1)}
        >
          −
        </button>
        <output aria-live="polite">{t.peopleAtLine(people)}</output>
        <button
          type="button"
          className="btn"
          aria-label={t.onePersonMore}
          disabled={people >= 30}
          onClick={() => onPeople(people + 1)}
        >
          +
        </button>
      </div>
      {lines.map((line, at) =>
        line.containers === 0 ? null : (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is its number
          <OneLine key={at} {...{ line, lineNo: at + 1, plan }} />
        ),
      )}
      <Crew plan={plan} />
      <StandWhere plan={plan} />
      <Times plan={plan} />
      <SpoilingOfDay param={{ storehouse, session: session.id }} />
      <Cautions />
      <PaperLinks papers={[{ kind: 'run-sheet', path: `packing-sessions/${session.id}/papers/run-sheet` }]} />
    </>
  );
}

function OneLine({ line, lineNo, plan }: { line: LinePlan; lineNo: number; plan: PlanBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  const { session } = plan;
  const at = (seconds: number) =>
    format.hour(new Date(Date.parse(session.startsAt) + seconds * 1000).toISOString());
  const nameOf = (food: { nameEn: string; nameEs: string } | undefined) =>
    food ? nameIn(format.language, food) : '';
  const stations = (names: readonly string[]) =>
    names.map((name) => t.stations[name as keyof typeof t.stations] ?? name).join(', ');
  const isAhead = session.stage === 'open' || session.stage === 'running';
  const shownMore = line.withOneMore && at(saidFinish(line.withOneMore.finishSeconds));
  return (
    <section className="stack">
      {plan.lines.length > 1 ? <h2>{t.line(lineNo)}</h2> : null}
      {line.finishSeconds === null ? null : (
        <LineClock line={line} startsAt={session.startsAt} day={session} />
      )}
      <p>
        {line.finishSeconds === null
          ? null
          : t.bottleneck(stations(line.bottleneck), format.count(Math.round(line.cycleSeconds ?? 0)))}{' '}
        {line.withOneMore && shownMore
          ? t.oneMoreBuys(shownMore, stations(line.withOneMore.at))
          : t.oneMoreBuysNothing}
      </p>
      <Room line={line} />
      {line.waitSeconds >= 60 ? <p>{t.waitsBetween(Math.round(line.waitSeconds / 60))}</p> : null}
      {line.lids === null ? null : (
        <p>{t.lidsWait(at(saidFinish(line.lids.lastSecond)), Math.ceil(line.lids.longerSeconds / 60))}</p>
      )}
      {line.idlePeople > 0 ? <p>{t.idle(line.idlePeople)}</p> : null}
      {isAhead ? <ScaleWarning scale={line.scale} /> : null}
      {line.clashes.length > 0 ? (
        <p className="said" role="alert">
          {t.clash(
            [
              ...new Set(
                line.clashes.map(({ wishId }) =>
                  nameOf(line.runs.find((run) => run.wishId === wishId)?.food),
                ),
              ),
            ].join(', '),
          )}
        </p>
      ) : null}
      <Ledger
        caption={t.runSheet}
        columns={[
          { name: t.starts },
          { name: t.what },
          { name: t.containers, isNumber: true },
          { name: t.each, isNumber: true },
          { name: t.serials, isNumber: true },
        ]}
        rows={line.runs.map((run) => ({
          key: run.wishId,
          cells: [
            at(run.startsAtSecond),
            <span key="what">
              {nameOf(run.food)}
              <span className="soft block">{run.household}</span>
              {line.mixes
                .filter(({ id }) => id === run.mixId)
                .map((mix) => (
                  <span key={mix.id} className="soft block">
                    {t.mix.run(mix.containers)}
                  </span>
                ))}
              {run.changeoverMinutes === 0 ? null : (
                <span className="soft block">
                  {run.changeoverMinutes > 5
                    ? t.fullClean(run.changeoverMinutes)
                    : t.wipeDown(run.changeoverMinutes)}
                </span>
              )}
              {run.dryIce === null ? null : (
                <span className="block">
                  {t.dryIce(
                    format.count(run.dryIce.gramsEach),
                    format.count(run.dryIce.gramsInAll),
                    run.dryIce.waitMinutes,
                  )}
                </span>
              )}
            </span>,
            format.count(run.containers),
            format.mass(run.gramsEach ?? 0),
            `${run.fromSerial}–${run.toSerial}`,
          ],
        }))}
      />
      {line.mixes.map((mix) => (
        <MixedRun key={mix.id} mix={mix} session={session} />
      ))}
      <IceCautions line={line} />
    </section>
  );
}

/** How much of its hours a line fills. */
function Room({ line: { containers, capacity } }: { line: LinePlan }) {
  const t = usePackingText();
  const { format } = useHouse();
  if (capacity === null) return null;
  return containers <= capacity ? (
    <p className="soft">{t.capacity(format.count(containers), format.count(capacity))}</p>
  ) : (
    <p className="said watch-said">{t.overCapacity(containers - capacity, format.count(capacity))}</p>
  );
}

/** Beneath the runs that take dry ice, since that is where somebody holds it. */
function IceCautions({ line }: { line: LinePlan }) {
  const t = usePackingText();
  const { format } = useHouse();
  const cautions = line.runs.find(({ dryIce }) => dryIce !== null)?.dryIce?.cautions ?? [];
  return cautions.map(({ code, say, deferTo }) => (
    <p key={code} className="said watch-said">
      {say[format.language]} <span className="soft block">{t.comesFirst(deferTo[format.language])}</span>
    </p>
  ));
}

const isTickOf = (personId: string, { act, refusal }: Waiting<LogAct>): boolean =>
  act.kind === 'hand' && act.person === personId && refusal === null;

/** Who said that they come, and how likely that is enough; nobody's own record is told. */
function Crew({ plan }: { plan: PlanBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  const { crew, session } = plan;
  const { waiting, write } = useLogQueue(session.id);
  const stateOf = ({ personId, state }: PlanBody['crew']['hands'][number]) => {
    const { act } = waiting.findLast((one) => isTickOf(personId, one)) ?? {};
    return act?.kind === 'hand' ? act.json.state : state;
  };
  return (
    <NextStep title={t.crew}>
      <p>
        {crew.moreToAsk === 0
          ? t.enough(crew.wanted, format.count(Math.round(crew.chance * 100)))
          : t.askMore(crew.moreToAsk, crew.wanted, format.count(Math.round(crew.chance * 100)))}
      </p>
      {crew.hands.length === 0 ? null : (
        <ul className="list hands">
          {crew.hands.map((hand) => (
            <li key={hand.personId} className="row">
              <span>
                {hand.name}
                <span className="soft block">
                  {[
                    t.handStates[stateOf(hand) as keyof typeof t.handStates],
                    hand.maySeam ? t.trained : '',
                    hand.mayLift ? '' : t.noLifting,
                    hand.seatedOnly ? t.worksSeated : '',
                    hand.isUnder16 ? t.under16 : '',
                  ]
                    .filter(Boolean)
                    .join(' · ')}
                </span>
              </span>
              <span className="actions">
                {(['came', 'stayed-away'] as const).map((state) => (
                  <button
                    key={state}
                    type="button"
                    className="btn quiet"
                    aria-pressed={stateOf(hand) === state}
                    onClick={() =>
                      write({ kind: 'hand', person: hand.personId, name: hand.name, json: { state } })
                    }
                  >
                    {t.tick[state]}
                  </button>
                ))}
              </span>
            </li>
          ))}
        </ul>
      )}
    </NextStep>
  );
}

/** At the step where they matter, with whose word comes first. */
function Cautions() {
  const t = usePackingText();
  return (
    <section className="stack">
      <h2>{t.cautions}</h2>
      {t.cautionsOfDay.map((words) => (
        <p key={words} className="said watch-said">
          {words}
        </p>
      ))}
    </section>
  );
}
