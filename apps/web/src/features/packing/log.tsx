import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { WithWaiting } from '../../ui/with-waiting.tsx';
import { ScaleWarnings } from '../scale/scales-of-day.tsx';
import { StoppedHere } from '../seam/stopped-here.tsx';
import { kindsQuery } from '../shelf/queries.ts';
import { SpoilingOfDay } from '../supplies/spoiling.tsx';
import { treatmentsQuery } from '../treatment/queries.ts';
import { AbsorberClock } from './absorber-clock.tsx';
import { BringBag } from './bring-bag.tsx';
import { CleanDown } from './clean-down.tsx';
import { FindPoured } from './find-poured.tsx';
import { useJam } from './jam.tsx';
import { Mass } from './mass.tsx';
import { PourOn } from './pour-on.tsx';
import { type LogBody, type PlanBody, planQuery } from './queries.ts';
import { QueueTaps, queuesWaiting } from './queue-taps.tsx';
import { type LogQueue, useLog } from './use-log.ts';
import { WaitingActs } from './waiting-acts.tsx';
import { bagsHere } from './waiting-bags.ts';
import { usePackingText } from './words.ts';
import './packing.css';

/** The running day on a phone: pour after pour, the absorbers' clock, and the mass until it balances. */
export function Log() {
  const t = usePackingText();
  const { session } = useParams({ from: '/s/$storehouse/packing/$session/log' });
  const { storehouse } = useHouse();
  useTitle(t.log);
  const log = useLog(session);
  const plan = useQuery(planQuery({ storehouse, session }));
  const kinds = useQuery(kindsQuery({ storehouse }));
  const known = useQuery(treatmentsQuery({ storehouse }));
  return (
    <div className="pour">
      <Link className="who" to="/s/$storehouse/packing/$session" params={{ storehouse, session }}>
        <BackIcon />
        {t.toDay}
      </Link>
      <Loaded isPage reading={joined(log.reading, joined(plan, joined(kinds, known)))}>
        {([book, [planned, [{ containerKinds }, { treatments }]]]) => {
          const body = { ...book, bags: bagsHere(book.bags, log.waiting) };
          const bring = <BringBag log={log} body={body} plan={planned} />;
          return (
            <>
              <h1>{titleOf(t, body)}</h1>
              <Link
                className="btn"
                to="/s/$storehouse/packing/$session/seals"
                params={{ storehouse, session }}
              >
                {t.toSeals}
              </Link>
              {body.stage === 'running' ? (
                <Link
                  className="btn"
                  to="/s/$storehouse/packing/$session/tares"
                  params={{ storehouse, session }}
                >
                  {t.toTares}
                </Link>
              ) : null}
              <WithWaiting
                isRefused={log.waiting.some(({ refusal }) => refusal !== null)}
                waiting={<WaitingActs log={log} />}
              >
                {body.stage === 'running' ? (
                  <>
                    <SpoilingOfDay param={{ storehouse, session }} />
                    <ScaleWarnings lines={planned.lines} />
                    <StoppedHere log={log} />
                    {body.bags.length === 0 ? (
                      bring
                    ) : (
                      <PourOn {...{ log, body, plan: planned, kinds: containerKinds, treatments }} />
                    )}
                    <Jams body={body} plan={planned} log={log} />
                    <AbsorberClock log={log} body={body} />
                    {body.bags.length === 0 ? null : bring}
                  </>
                ) : null}
              </WithWaiting>
              <FindPoured body={body} />
              {body.stage === 'running' ? <CleanDown sessionId={session} /> : null}
              <Mass log={log} body={book} here={body.bags} />
            </>
          );
        }}
      </Loaded>
    </div>
  );
}

/** Where each line jams now, and the taps that tell it. */
function Jams({ body, plan, log }: { body: LogBody; plan: PlanBody; log: LogQueue }) {
  const t = usePackingText();
  const sayJam = useJam();
  const queues = [...body.queues, ...queuesWaiting(log.waiting)];
  return (
    <section className="stack">
      <h2>{t.jam}</h2>
      {plan.lines.map((line, at) =>
        line.cycleSeconds === null || line.containers === 0 ? null : (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is its number
          <p key={at}>
            {plan.lines.length > 1 ? <b>{t.line(at + 1)}: </b> : null}
            {sayJam(line, at + 1, { ...body, queues })}
          </p>
        ),
      )}
      <QueueTaps day={plan.session} said={queues} onSay={log.write} />
    </section>
  );
}

function titleOf(
  t: ReturnType<typeof usePackingText>,
  body: { stage: string; pours: readonly { isUndone: boolean }[]; bags: readonly unknown[] },
): string {
  const closed = body.pours.filter(({ isUndone }) => !isUndone).length;
  if (body.stage === 'signed' || body.stage === 'settled') return t.logSigned(closed);
  if (body.stage === 'open') return t.logNotBegun;
  return body.bags.length === 0 ? t.logNoBags : t.logStands(closed);
}
