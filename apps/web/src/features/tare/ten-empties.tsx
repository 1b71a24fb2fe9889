import { judgeTare, TARE_CONTAINERS, TARE_SPREAD_GRAMS } from '@sheafbook/packing';
import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { Choice } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useNamed } from '../../ui/use-named.ts';
import { useTitle } from '../../ui/use-title.ts';
import { WithWaiting } from '../../ui/with-waiting.tsx';
import { planQuery } from '../packing/queries.ts';
import { type LogQueue, useLogQueue } from '../packing/use-log.ts';
import { WaitingActs } from '../packing/waiting-acts.tsx';
import { usePackingText } from '../packing/words.ts';
import { type Kind, kindsQuery } from '../shelf/queries.ts';
import { type Tare, taresQuery } from './queries.ts';
import { type TareSaid, tareHere, tareTyped } from './tare-here.ts';
import { useTareText } from './words.ts';
import '../landing/landing.css';
import '../packing/packing.css';
import './tare.css';

/** Ten empties of a kind are weighed when a new batch of them, or of their lids, is opened; before the day or at the line. */
export function TenEmpties() {
  const t = useTareText();
  const { session } = useParams({ from: '/s/$storehouse/packing/$session/tares' });
  const { storehouse } = useHouse();
  const param = { storehouse, session };
  useTitle(t.title);
  const log = useLogQueue(session);
  const plan = useQuery(planQuery(param));
  const kinds = useQuery(kindsQuery({ storehouse }));
  const tares = useQuery(taresQuery({ storehouse }));
  return (
    <div className="pour tens">
      <BackLink param={param} isRunning={plan.data?.session.stage === 'running'} />
      <Loaded isPage reading={joined(plan, joined(kinds, tares))}>
        {([{ lines }, [{ containerKinds }, { tares: weighed }]]) => {
          const planned = new Set(lines.flatMap(({ runs }) => runs.map(({ kind }) => kind.id)));
          const [first, then] = [true, false].map((isPlanned) =>
            containerKinds.filter(({ id }) => planned.has(id) === isPlanned),
          );
          return <WeighTen {...{ log, tares: weighed, kinds: [...(first ?? []), ...(then ?? [])] }} />;
        }}
      </Loaded>
    </div>
  );
}

function BackLink({
  param,
  isRunning,
}: {
  param: { storehouse: string; session: string };
  isRunning: boolean;
}) {
  const t = usePackingText();
  return isRunning ? (
    <Link className="who" to="/s/$storehouse/packing/$session/log" params={param}>
      <BackIcon />
      {t.toLog}
    </Link>
  ) : (
    <Link className="who" to="/s/$storehouse/packing/$session" params={param}>
      <BackIcon />
      {t.toDay}
    </Link>
  );
}

const START = { kindId: '', figure: '', readings: '' };
const asGrams = (text: string): number[] => text.split(' ').filter(Boolean).map(Number);

function WeighTen({ log, kinds, tares }: { log: LogQueue; kinds: readonly Kind[]; tares: readonly Tare[] }) {
  const t = useTareText();
  const { format } = useHouse();
  const nameOf = useNamed();
  const { draft, change } = useDraft(`tares.${log.param.session}`, START);
  const kind = kinds.find(({ id }) => id === draft.kindId) ?? kinds[0];
  if (!kind) return null;
  const readings = asGrams(draft.readings);
  const typed = tareTyped(draft.figure);
  const isTyped = typed !== undefined;
  const last = readings.at(-1);
  const isFull = readings.length >= TARE_CONTAINERS;
  const keep = (next: readonly number[]) => change({ readings: next.join(' '), figure: '' });
  const save = () => {
    log.write({
      kind: 'tare',
      json: { containerKindId: kind.id, readings, weighedAt: new Date().toISOString() },
      named: { nameEn: kind.nameEn, nameEs: kind.nameEs },
    });
    keep([]);
  };
  return (
    <WithWaiting
      isRefused={log.waiting.some(({ refusal }) => refusal !== null)}
      waiting={<WaitingActs log={log} />}
    >
      <h1>{stands(t, nameOf(kind), tareHere(kind.id, tares, log.waiting))}</h1>
      {readings.length > 0 ? null : (
        <>
          <LastWeighed tare={tares.find((one) => one.kind.id === kind.id)} />
          <p>{t.says}</p>
        </>
      )}
      <Choice
        label={t.kind}
        value={kind.id}
        options={kinds.map((one) => ({ value: one.id, name: nameOf(one) }))}
        onChange={(kindId) => change({ kindId, readings: '', figure: '' })}
      />
      <Empties readings={readings} onDrop={(at) => keep(readings.filter((_, place) => place !== at))} />
      {isFull ? (
        <Verdict {...{ readings, save }} />
      ) : (
        <Form onSend={() => typed !== undefined && keep([...readings, typed])}>
          <p role="status">{t.soFar(readings.length, spreadOf(readings), TARE_SPREAD_GRAMS)}</p>
          <div>
            <div className="reading">
              <input
                aria-label={t.onTheScale(readings.length + 1)}
                inputMode="none"
                autoComplete="off"
                placeholder="0"
                value={draft.figure}
                aria-invalid={draft.figure !== '' && !isTyped ? true : undefined}
                aria-describedby="empty-problem"
                onChange={(event) => change({ figure: event.target.value.slice(0, 6) })}
              />
              <span className="unit">g</span>
            </div>
            <span id="empty-problem" className="problem wrong" role="alert">
              {draft.figure !== '' && !isTyped ? t.readingProblem : ''}
            </span>
          </div>
          <Keys
            text={draft.figure}
            isTyped={isTyped}
            onText={(figure) => change({ figure: figure.slice(0, 6) })}
          />
          {last === undefined ? null : (
            <button type="button" className="enamel word" onClick={() => keep([...readings, last])}>
              {t.same(format.count(last))}
            </button>
          )}
        </Form>
      )}
    </WithWaiting>
  );
}

const spreadOf = (readings: readonly number[]) =>
  readings.length === 0 ? 0 : Math.max(...readings) - Math.min(...readings);

function stands(t: ReturnType<typeof useTareText>, kind: string, tare: TareSaid | undefined): string {
  if (!tare) return t.notWeighed(kind);
  return tare.isAlike ? t.weighs(kind, tare.meanGrams) : t.unlike(kind, tare.spreadGrams);
}

function LastWeighed({ tare }: { tare: Tare | undefined }) {
  const t = useTareText();
  const { format } = useHouse();
  if (!tare) return null;
  const { leastGrams, mostGrams, weighedAt, weighedBy } = tare;
  return (
    <p className="soft">
      {t.last(format.instant(weighedAt), weighedBy, format.count(leastGrams), format.count(mostGrams))}
    </p>
  );
}

/** The ten as they were weighed; a tap takes a slip out again. */
function Empties({ readings, onDrop }: { readings: readonly number[]; onDrop: (at: number) => void }) {
  const t = useTareText();
  const { format } = useHouse();
  return (
    <ol className="empties" aria-label={t.ten}>
      {Array.from({ length: TARE_CONTAINERS }, (_, at) => {
        const grams = readings[at];
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the ten have nothing but their place
          <li key={at}>
            {grams === undefined ? (
              <span className="none soft">{at + 1}</span>
            ) : (
              <button
                type="button"
                className="btn"
                aria-label={t.takeOut(at + 1, format.count(grams))}
                onClick={() => onDrop(at)}
              >
                {grams}
              </button>
            )}
          </li>
        );
      })}
    </ol>
  );
}

/** What the ten come to, before it is kept. */
function Verdict({ readings, save }: { readings: readonly number[]; save: () => void }) {
  const t = useTareText();
  const { format } = useHouse();
  const { meanGrams, spreadGrams, isAlike } = judgeTare(readings);
  const mean = format.count(meanGrams);
  return (
    <>
      <p className={isAlike ? 'said well-said' : 'said'} role="status">
        {isAlike ? t.alike(mean, spreadGrams) : t.tooUnlike(spreadGrams, TARE_SPREAD_GRAMS)}
      </p>
      <button type="button" className="key" onClick={save}>
        {isAlike ? t.keep(mean) : t.keepUnlike}
      </button>
    </>
  );
}

const ROWS = [
  ['7', '8', '9'],
  ['4', '5', '6'],
  ['1', '2', '3'],
] as const;

/** Large enough for cold fingers; the last key takes the figure and asks for the next container. */
function Keys({ text, isTyped, onText }: { text: string; isTyped: boolean; onText: (text: string) => void }) {
  const t = useTareText();
  return (
    <fieldset className="keys">
      <legend className="sr">{t.pad}</legend>
      {ROWS.flat().map((key) => (
        <button key={key} type="button" className="enamel" onClick={() => onText(text + key)}>
          {key}
        </button>
      ))}
      <button
        type="button"
        className="enamel"
        aria-label={t.rubOut}
        onClick={() => onText(text.slice(0, -1))}
      >
        ⌫
      </button>
      <button type="button" className="enamel" onClick={() => onText(`${text}0`)}>
        0
      </button>
      <button type="submit" className="enamel go" disabled={!isTyped}>
        {t.next}
      </button>
    </fieldset>
  );
}
