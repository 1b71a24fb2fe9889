import { ABSORBER_SIZES, containersPerOneLost } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { useState } from 'react';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { WrongMark } from '../../ui/icons.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { useDraft } from '../../ui/use-draft.ts';
import { useNamed } from '../../ui/use-named.ts';
import { gramsOnScale } from '../shelf/mass-typed.ts';
import type { Kind } from '../shelf/queries.ts';
import { GROSS_START, GrossChoice, NetSaid, useGross } from '../tare/gross.tsx';
import { useTareText } from '../tare/words.ts';
import type { Treatment } from '../treatment/queries.ts';
import { codesTyped } from './codes-typed.ts';
import { Drift } from './drift.tsx';
import { dayThere, penTime } from './pen-time.ts';
import type { LogBody, LoggedPour, PlanBody } from './queries.ts';
import { labelsFit, UnderLabel } from './under-label.tsx';
import { UndoPour } from './undo-pour.tsx';
import type { Log } from './use-log.ts';
import { keyOfBag, poursWaiting, takenBack } from './waiting-bags.ts';
import { usePackingText } from './words.ts';

type PourProps = {
  log: Log;
  body: LogBody;
  plan: PlanBody;
  kinds: readonly Kind[];
  treatments: readonly Treatment[];
};
const START = {
  bag: '',
  kindId: '',
  treatment: '',
  packets: '',
  target: '',
  line: '1',
  figure: '',
  pen: '',
  count: '1',
  labels: '',
  ...GROSS_START,
};

/** One run at the line: its last reading, how far it has drifted, and the biggest key there is. */
export function PourOn({ log, body, plan, kinds, treatments }: PourProps) {
  const t = usePackingText();
  const { format } = useHouse();
  const nameOf = useNamed();
  const tare = useTareText();
  const { draft, change } = useDraft(`pour.${body.sessionId}`, START);
  const [isOther, setIsOther] = useState(false);
  const bag = body.bags.find((one) => keyOfBag(one) === draft.bag) ?? body.bags[0];
  const run = plan.lines
    .flatMap((line, at) => line.runs.map((one) => ({ ...one, line: at + 1 })))
    .find((one) => one.householdId === bag?.householdId && one.food?.id === bag.food.id);
  const kind =
    kinds.find(({ id }) => id === (draft.kindId || run?.kind?.id)) ??
    kinds.find(({ kindCode }) => kindCode === 'can-no-10') ??
    kinds[0];
  const gross = useGross(log, kind, draft);
  if (!bag) return null;
  const targetGrams = gramsOnScale(draft.target, bag.broughtGrams) ?? run?.gramsEach ?? 0;
  const line = Number(draft.line) || run?.line || 1;
  const treatment = (draft.treatment || run?.treatment || 'none') as Treatment['code'];
  const planned = sumOf((run?.packets ?? []).map((packet) => packet.sizeMillilitres * packet.count));
  const packets = treatment === 'oxygen-absorber' ? Number(draft.packets) || planned || null : null;
  const back = takenBack(log.waiting);
  const ofRun = body.pours.filter(
    (pour) =>
      !pour.isUndone &&
      pour.bagId === bag.bagId &&
      pour.householdId === bag.householdId &&
      !back.has(pour.entryId),
  );
  const waits = poursWaiting(log.waiting, bag);
  const next = ofRun.length + waits.length + 1;
  const typed = gramsOnScale(draft.figure, bag.leftInBagsGrams + (gross.tareGrams ?? 0));
  const net = gross.netOf(typed) ?? undefined;
  const full = gross.grossOf(targetGrams);
  const isToTare = gross.isGross && full === undefined;
  const count = /^\d{1,3}$/.test(draft.count.trim()) && !gross.isEach ? Math.max(1, Number(draft.count)) : 1;
  const codes = codesTyped(draft.labels);
  // What a pen wrote on the run sheet keeps its own time, on the wall of the storehouse: of the packing day, or of today where
  // the line runs sooner than planned.
  const [penOn] = [Date.now(), Date.parse(plan.session.startsAt)]
    .map((atMs) => dayThere(atMs, format.timeZone))
    .toSorted();
  const { penAt, isAhead } = penTime(isOther ? draft.pen : '', format.timeZone, penOn);
  const isLabelled = labelsFit(draft.labels, isOther ? count : 1);
  const pour = (grams: number, times: number) => {
    if (!kind) return;
    log.write({
      kind: 'pour',
      json: {
        ...{ line, bagId: bag.bagId, householdId: bag.householdId, containerKindId: kind.id },
        ...{ treatment, targetGrams, absorberMillilitres: packets },
        ...{
          grams: Array.from({ length: times }, () => grams),
          ...gross.weighed(grams, times),
          pouredAt: (penAt ?? new Date()).toISOString(),
        },
        ...(codes.length === 0 ? {} : { codes }),
      },
    });
    change({ figure: '', count: '1', labels: '', own: '' });
    setIsOther(false);
  };
  return (
    <section className="stack">
      <Choice
        label={t.whose}
        value={keyOfBag(bag)}
        options={body.bags.map((one) => ({
          value: keyOfBag(one),
          name: t.bagOf(nameOf(one.food), one.household, one.bagNo),
        }))}
        onChange={(value) => change({ bag: value, target: '', kindId: '', treatment: '', packets: '' })}
      />
      <LastReading pour={ofRun.at(-1)} />
      <Drift pours={ofRun.slice(-8)} targetGrams={targetGrams} />
      <Alarm pours={ofRun} targetGrams={targetGrams} />
      <GrossChoice {...{ gross, kind, draft, session: body.sessionId, onChange: change }} />
      {isOther ? (
        <div className="stack">
          <div className="pair">
            <Field
              label={gross.isGross ? tare.figureGross : t.figure}
              inputMode="decimal"
              hint={t.figureHint}
              value={draft.figure}
              onChange={(event) => change({ figure: event.target.value })}
              problem={draft.figure !== '' && typed === undefined ? t.massProblem : undefined}
            />
            {gross.isEach ? null : (
              <Field
                label={t.times}
                inputMode="numeric"
                value={draft.count}
                onChange={(event) => change({ count: event.target.value })}
              />
            )}
          </div>
          <NetSaid gross={gross} typed={typed} times={count} />
          <Field
            label={t.pen}
            type="time"
            hint={t.penHint}
            value={draft.pen}
            onChange={(event) => change({ pen: event.target.value })}
            problem={isAhead ? t.penAhead : undefined}
          />
          <button
            type="button"
            className="key"
            disabled={net === undefined || targetGrams === 0 || !isLabelled || isAhead}
            onClick={() => net !== undefined && pour(net, count)}
          >
            {isToTare
              ? tare.typeOwn
              : net === undefined
                ? t.typeFigure
                : t.logIt(next, count, format.count(net))}
          </button>
        </div>
      ) : (
        <button
          type="button"
          className="key"
          disabled={targetGrams === 0 || bag.leftInBagsGrams < targetGrams || !isLabelled || isToTare}
          onClick={() => pour(targetGrams, 1)}
        >
          {targetGrams === 0
            ? t.noTarget
            : isToTare
              ? tare.typeOwn
              : t.logIt(next, 1, format.count(targetGrams))}
          {gross.isGross && full !== undefined && targetGrams > 0 ? (
            <small className="block">{tare.scaleShows(format.count(full))}</small>
          ) : null}
        </button>
      )}
      <div className="pair">
        <button type="button" className="btn" onClick={() => setIsOther(!isOther)}>
          {isOther ? t.asWanted : t.anotherFigure}
        </button>
        <UndoPour {...{ log, bag, waits }} poured={ofRun} />
      </div>
      <UnderLabel
        typed={draft.labels}
        count={isOther ? count : 1}
        sayOn={body.labelsSayOn}
        onChange={(labels) => change({ labels })}
      />
      <RunSettings {...{ draft, change, kinds, treatments, kind, treatment, packets, targetGrams }} />
    </section>
  );
}

type Draft = typeof START;

/** What a run is poured into, what is done to it, and how much of it goes in; as the plan says unless somebody says otherwise. */
function RunSettings({
  draft,
  change,
  kinds,
  treatments,
  kind,
  treatment,
  packets,
  targetGrams,
}: Pick<PourProps, 'kinds' | 'treatments'> & {
  draft: Draft;
  change: (changed: Partial<Draft>) => void;
  kind: Kind | undefined;
  treatment: string;
  packets: number | null;
  targetGrams: number;
}) {
  const t = usePackingText();
  const { format } = useHouse();
  return (
    <details open={targetGrams === 0}>
      <summary>{t.settings}</summary>
      <div className="stack">
        <Choice
          label={t.kind}
          value={kind?.id ?? ''}
          options={kinds.map((one) => ({
            value: one.id,
            name: nameIn(format.language, one),
          }))}
          onChange={(kindId) => change({ kindId })}
        />
        <Choice
          label={t.treatment}
          value={treatment}
          options={treatments.map(({ code, names }) => ({ value: code, name: names[format.language] }))}
          onChange={(code) => change({ treatment: code })}
        />
        {treatment === 'oxygen-absorber' ? (
          <Choice
            label={t.packetsIn}
            value={packets === null ? '' : String(packets)}
            options={packetChoices(packets).map((size) => ({
              value: size === null ? '' : String(size),
              name: size === null ? t.packetsUnsaid : t.packetsTake(format.count(size)),
            }))}
            onChange={(size) => change({ packets: size })}
          />
        ) : null}
        <div className="pair">
          <Field
            label={t.target}
            inputMode="decimal"
            hint={t.targetHint(format.count(targetGrams))}
            value={draft.target}
            onChange={(event) => change({ target: event.target.value })}
          />
          <Field
            label={t.lineNo}
            inputMode="numeric"
            value={draft.line}
            onChange={(event) => change({ line: event.target.value })}
          />
        </div>
      </div>
    </details>
  );
}

/** The sizes that packets are sold in, what the plan puts in, and, where nobody has said, nothing. */
const packetChoices = (packets: number | null): (number | null)[] => {
  if (packets === null) return [null, ...ABSORBER_SIZES];
  return [...new Set([...ABSORBER_SIZES, packets])].toSorted((a, b) => a - b);
};

function LastReading({ pour }: { pour: LoggedPour | undefined }) {
  const t = usePackingText();
  const { format } = useHouse();
  if (!pour) return null;
  const over = pour.grams - pour.targetGrams;
  return (
    <div className="last" role="status">
      <b>
        {format.count(pour.grams)} <span className="u">g</span>
      </b>
      <span>
        <span className="soft block">{t.lastOf(pour.serial, pour.code)}</span>
        <span className={pour.alarms.includes('single') ? 'wrong' : ''}>
          {pour.alarms.includes('single') ? <WrongMark /> : null} {t.off(over)}
        </span>
      </span>
    </div>
  );
}

/** Over-pouring told as what it costs: one can in so many given away. */
function Alarm({ pours, targetGrams }: { pours: readonly LoggedPour[]; targetGrams: number }) {
  const t = usePackingText();
  const { format } = useHouse();
  const last = pours.at(-1);
  if (!last || targetGrams === 0 || last.excessGrams <= 0 || last.alarms.length === 0) return null;
  const each = Math.round(last.excessGrams / pours.length);
  const lost = containersPerOneLost(targetGrams, each);
  return (
    <p className="said" role="alert">
      {t.overBy(format.count(last.excessGrams), pours.length)}{' '}
      {lost === null ? null : t.oneGiven(format.count(lost))}{' '}
      {last.alarms.includes('shortage') ? t.shortage : null}
    </p>
  );
}
