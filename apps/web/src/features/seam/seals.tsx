import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { WithWaiting } from '../../ui/with-waiting.tsx';
import { LidsOf } from '../lid/lids-of.tsx';
import { useLogQueue } from '../packing/use-log.ts';
import { WaitingActs } from '../packing/waiting-acts.tsx';
import { PaperLinks } from '../paper/paper-links.tsx';
import { keepsStore } from '../place/queries.ts';
import { type Kind, kindsQuery } from '../shelf/queries.ts';
import { CheckForm, draftOf, START } from './check-form.tsx';
import { type LineWatch, type Watch, watchQuery } from './queries.ts';
import { watchHere } from './watch-here.ts';
import { WindowOf } from './window.tsx';
import { type SeamText, useSeamText } from './words.ts';
import './seam.css';

/** The seals of a running day: the next check, the check itself, and what a failed one left in doubt. */
export function Seals() {
  const { session } = useParams({ from: '/s/$storehouse/packing/$session/seals' });
  const { storehouse } = useHouse();
  const reading = useQuery(watchQuery({ storehouse, session }));
  const kinds = useQuery(kindsQuery({ storehouse }));
  return (
    <Loaded isPage reading={joined(reading, kinds)}>
      {([watch, { containerKinds }]) => <SealsBody watch={watch} kinds={containerKinds} />}
    </Loaded>
  );
}

function SealsBody({ watch: read, kinds }: { watch: Watch; kinds: readonly Kind[] }) {
  const t = useSeamText();
  const house = useHouse();
  const { storehouse } = house;
  const [serial, setSerial] = useState<number | null>(null);
  const params = { storehouse, session: read.session.id };
  const log = useLogQueue(read.session.id);
  const watch = watchHere(read, log.waiting);
  const form = useDraft(`seal-check.${watch.session.id}`, START);
  useTitle(t.seals);
  return (
    <div className="seals stack">
      <Link className="who" to="/s/$storehouse/packing/$session/log" params={params}>
        <BackIcon />
        {t.toLog}
      </Link>
      <h1>{standsOf(t, watch)}</h1>
      {watch.lines.map((line) => (
        <Due key={`${line.line} ${line.machine.id}`} line={line} isOver={isOver(watch)} />
      ))}
      {watch.windows.map((window) => (
        <WindowOf key={window.check.id} {...{ window, watch, log }} onOpen={setSerial} />
      ))}
      {watch.machines.length === 0 ? (
        <p>{t.noMachines}</p>
      ) : (
        <WithWaiting
          isRefused={log.waiting.some(({ refusal }) => refusal !== null)}
          waiting={
            <WaitingActs
              log={log}
              onPutRight={(check) => {
                setSerial(null);
                form.change(draftOf(check));
              }}
            />
          }
        >
          <CheckForm
            key={serial ?? 'line'}
            {...{ watch, kinds, serial, log, form }}
            onDone={() => setSerial(null)}
          />
        </WithWaiting>
      )}
      <Link className="btn" to="/s/$storehouse/packing/machines" params={{ storehouse }}>
        {t.toMachines}
      </Link>
      {keepsStore(house) ? <LidsOf of="common" session={watch.session.id} /> : null}
      <Checks watch={watch} />
      <PaperLinks
        papers={[
          { kind: 'seam-log', path: `packing-sessions/${watch.session.id}/papers/seam-log` },
          ...watch.windows.map(({ check, suspects }) => ({
            kind: 'quarantine-tag',
            path: `seal-checks/${check.id}/tag`,
            of: t.fromTo(suspects[0]?.serial ?? 0, suspects.at(-1)?.serial ?? 0),
          })),
        ]}
      />
    </div>
  );
}

const isOver = ({ session }: Watch): boolean => session.stage !== 'open' && session.stage !== 'running';

function standsOf(t: SeamText, watch: Watch): string {
  const { lines, windows, checks } = watch;
  const open = windows.flatMap(({ suspects }) => suspects.filter(({ disposition }) => disposition === null));
  if (open.length > 0) return t.inDoubt(open.length);
  const out = lines.find(({ machine }) => machine.outSince !== null);
  if (out) return t.isOut(out.machine.name);
  if (isOver(watch)) return t.dayOver;
  if (checks.length === 0 || lines.some(({ why }) => why !== null)) return t.checkNow;
  return t.allGood;
}

function Due({ line, isOver }: { line: LineWatch; isOver: boolean }) {
  const t = useSeamText();
  const { format } = useHouse();
  const { machine, lastGood, why } = line;
  const name = t.lineOf(line.line, machine.name);
  if (machine.outSince !== null)
    return <p className="said">{t.outSays(name, format.instant(machine.outSince))}</p>;
  return (
    <p className={why === null ? 'said well-said' : 'said watch-said'}>
      <b>{name}</b> {isOver ? t.nothingDue : why === null ? nextOf(t, line) : t.dueBecause[why]}
      <span className="soft block">
        {lastGood
          ? t.sinceGood(line.closedSince, lastGood.serial, format.instant(lastGood.checkedAt))
          : t.neverGood}
      </span>
    </p>
  );
}

/** A line that stands still is not due, whatever the hour says: its next container is the next to check. */
const nextOf = (t: SeamText, { containersLeft, minutesLeft }: LineWatch): string =>
  minutesLeft === 0 ? t.nextOne : t.nextIn(containersLeft, minutesLeft);

function Checks({ watch }: { watch: Watch }) {
  const t = useSeamText();
  const { format } = useHouse();
  if (watch.checks.length === 0) return null;
  return (
    <details>
      <summary>{t.checks(watch.checks.length)}</summary>
      <ul className="list">
        {watch.checks.toReversed().map((check) => (
          <li key={check.id}>
            <span>
              <b className={check.passed ? '' : 'wrong'}>{check.passed ? t.passed : t.failed}</b>{' '}
              {t.hows[check.how as keyof typeof t.hows]}, {t.placeOf(check.line, check.serial)}
              <span className="soft block">
                {[
                  format.instant(check.checkedAt),
                  check.checkedByName,
                  t.occasions[check.occasion as keyof typeof t.occasions],
                  check.note,
                ]
                  .filter(Boolean)
                  .join(' · ')}
              </span>
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
