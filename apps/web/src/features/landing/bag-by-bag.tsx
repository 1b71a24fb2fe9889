import { Link, useParams } from '@tanstack/react-router';
import { useRef } from 'react';
import { Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { WithWaiting } from '../../ui/with-waiting.tsx';
import { FloorFigure, FloorTable, kindsOf } from './floor-figure.tsx';
import { nameOfLine, spoken } from './landing-body.ts';
import { Pad, Reading } from './pad.tsx';
import { isRefused, type Written } from './queue.ts';
import { gramsOf, type PadDraft, padOf, readingOf, type Weighed, weighedBy } from './reading.ts';
import { SayBag } from './say-bag.tsx';
import { scaleText } from './scale.ts';
import { ScaleFigure } from './scale-figure.tsx';
import { keepScaleUnit, scaleUnit } from './scale-unit.ts';
import {
  type Floor,
  floorOf,
  type Landing,
  type OpenLorry,
  openDelivery,
  useLanding,
} from './use-landing.ts';
import { WaitingList } from './waiting-list.tsx';
import { useLandingText } from './words.ts';

/** One bag size on the scale, bag after bag, with or without a signal. */
export function BagByBag() {
  const t = useLandingText();
  const { buy, size } = useParams({ from: '/s/$storehouse/buys/$buy/landing/$size' });
  const { storehouse, format } = useHouse();
  const landing = useLanding(buy);
  const line = landing.reading.data?.[0].lines.find(({ bagOfferId }) => bagOfferId === size);
  return (
    <div className="lorry narrow tight">
      <Link className="who" to="/s/$storehouse/buys/$buy/landing" params={{ storehouse, buy }}>
        <BackIcon />
        {line ? t.landingOf(nameOfLine(line, format.language)) : t.toLanding}
      </Link>
      <Loaded isPage reading={landing.reading}>
        {([sheet, [deliveries, bags]]) => {
          const lorry = openDelivery(landing.queue, deliveries);
          if (!line) return <h1>{t.noSuchSize}</h1>;
          const floor = floorOf(line, lorry, { queue: landing.queue, deliveries, bags });
          if (!lorry || floor.counted === null)
            return <h1>{t.countFirst(nameOfLine(line, format.language))}</h1>;
          return <OnTheScale landing={landing} lorry={lorry} floor={floor} lines={sheet.lines} />;
        }}
      </Loaded>
    </div>
  );
}

type OnTheScaleProps = {
  landing: Landing;
  lorry: OpenLorry;
  floor: Floor;
  lines: readonly Floor['line'][];
};

function OnTheScale({ landing, lorry, floor, lines }: OnTheScaleProps) {
  const t = useLandingText();
  const { format } = useHouse();
  const { line } = floor;
  const name = nameOfLine(line, format.language);
  const {
    draft: pad,
    change,
    reset,
  } = useDraft<PadDraft>(`pad.${line.bagOfferId}`, padOf(scaleUnit() ?? format.massUnit));
  const kinds = kindsOf(floor);
  const mending = floor.waiting.find(({ id }) => id === pad.mendingId);
  const at = mending ? floor.bags.length + floor.waiting.indexOf(mending) : kinds.indexOf('now');
  const bagNo = at + 1;
  useTitle(`${name}: ${t.bagOf(bagNo, kinds.length)}`);
  const clear = () => reset({ ...padOf(pad.unit), mark: pad.mark, tare: pad.tare }); // the next bag is weighed alike
  const onMend = ({ id, act }: Written) => {
    if (act.kind !== 'bag') return;
    const { grossGrams, condition, note, supplierMark } = act.bag;
    const text = grossGrams === undefined ? '' : scaleText(grossGrams, act.unit, 'en');
    change({ mendingId: id, text, unit: act.unit, condition, note, mark: supplierMark });
  };
  const isDone = at < 0;
  return (
    <>
      <div className="row">
        <h1>{isDone ? t.allWeighed(kinds.length) : t.bagOf(bagNo, kinds.length)}</h1>
        <span className="soft">{t.keptAndRefused(countKept(kinds), countOf(kinds, 'refused'))}</span>
      </div>
      <FloorFigure floor={floor} />
      <LastBag floor={floor} />
      <WithWaiting
        isRefused={isRefused(landing.queue)}
        waiting={<WaitingList landing={landing} lines={lines} onMend={onMend} />}
      >
        {isDone ? (
          <NextSize />
        ) : (
          <Scale
            key={pad.mendingId}
            {...{ pad, change, floor, bagNo }}
            onKept={(reading) => {
              const act = { kind: 'bag', deliveryId: lorry.id, bag: reading, unit: pad.unit } as const;
              const before = landing.queue.written.find(({ id }) => id === pad.mendingId);
              if (before?.act.kind === 'bag')
                landing.mend(before.id, { ...act, deliveryId: before.act.deliveryId });
              else landing.write(act);
              clear();
            }}
          />
        )}
      </WithWaiting>
      <FloorTable floor={floor} unit={pad.unit} />
    </>
  );
}

const countOf = (kinds: readonly string[], wanted: string) => kinds.filter((kind) => kind === wanted).length;
const countKept = (kinds: readonly string[]) =>
  countOf(kinds, 'kept') + countOf(kinds, 'noted') + countOf(kinds, 'held') + countOf(kinds, 'waiting');

function NextSize() {
  const t = useLandingText();
  const { storehouse } = useHouse();
  const { buy } = useParams({ from: '/s/$storehouse/buys/$buy/landing/$size' });
  return (
    <Link className="btn go" to="/s/$storehouse/buys/$buy/landing" params={{ storehouse, buy }}>
      {t.backToLorry}
    </Link>
  );
}

/** The code that somebody now writes on the bag that was just put down. */
function LastBag({ floor }: { floor: Floor }) {
  const t = useLandingText();
  const last = floor.bags.at(-1);
  if (!last || floor.waiting.length > 0) return null;
  return (
    <p className="last" role="status">
      {last.decision === 'refused'
        ? t.sentBack(floor.bags.length)
        : t.writeCode(spoken(last.bagCode), floor.bags.length)}
    </p>
  );
}

type ScaleProps = {
  pad: PadDraft;
  change: (part: Partial<PadDraft>) => void;
  floor: Floor;
  bagNo: number;
  onKept: (reading: ReturnType<typeof readingOf>) => void;
};

function Scale({ pad, change, floor, bagNo, onKept }: ScaleProps) {
  const t = useLandingText();
  const more = useRef<HTMLDetailsElement>(null);
  const { line } = floor;
  const declaredGrams = declaredOf(floor);
  const onScale = (written: PadDraft) => (declaredGrams === null ? null : weighedBy(written, declaredGrams));
  const weighed = onScale(pad);
  const tareProblem = gramsOf(pad.tare, 'kg') === null ? t.massProblem : undefined;
  const gross = gramsOf(pad.text, pad.unit);
  const problem =
    pad.text !== '' && gross === null
      ? t.massProblem
      : gross !== null && weighed === null && declaredGrams !== null && !tareProblem
        ? t.lighterThanSack
        : '';
  const write = (written: PadDraft, isRefused: boolean) =>
    onKept(
      readingOf({
        ...{ pad: written, bagOfferId: line.bagOfferId, weighed: onScale(written), isRefused },
        conditionWords: t.noteOf[written.condition],
      }),
    );
  const keepSaid = (said: Partial<PadDraft>) => {
    const heard = { ...pad, ...said };
    if (onScale(heard)) write(heard, false);
  };
  const keep = (isRefused: boolean) => {
    if (isRefused && pad.condition === 'dry' && pad.note.trim() === '') {
      if (more.current) more.current.open = true;
      more.current?.querySelector('input')?.focus();
      return;
    }
    write(pad, isRefused);
  };
  const isNoted = pad.condition !== 'dry' || pad.note.trim() !== '';
  return (
    <Form
      isTight
      onSend={() => {
        if (weighed) keep(false);
      }}
    >
      <Reading
        {...{ text: pad.text, unit: pad.unit, problem }}
        onText={(text) => change({ text })}
        onUnit={(unit) => {
          keepScaleUnit(unit);
          change({ unit });
        }}
      />
      <Verdict pad={pad} weighed={weighed} declaredGrams={declaredGrams} />
      <Pad
        text={pad.text}
        condition={pad.condition}
        onText={(text) => change({ text })}
        onCondition={(condition) => change({ condition })}
      />
      <button type="submit" className="enamel go" disabled={!weighed || tareProblem !== undefined}>
        {isNoted ? t.keepNoted(bagNo) : t.keep(bagNo)}
      </button>
      <div className="pair">
        <button type="button" className="btn" onClick={() => keep(true)}>
          {t.refuse(bagNo)}
        </button>
        <button type="button" className="btn" disabled={pad.text !== ''} onClick={() => keep(false)}>
          {t.keepUnweighed}
        </button>
      </div>
      <SayBag {...{ pad, bagNo, change }} onKeep={keepSaid} />
      <details ref={more} open={pad.note !== '' || pad.mark !== ''}>
        <summary>{t.markTareNote}</summary>
        <div className="stack tight">
          <Field
            label={t.note}
            hint={t.noteHint}
            value={pad.note}
            onChange={(event) => change({ note: event.target.value })}
          />
          <div className="pair roomy">
            <Field
              label={t.lotMark}
              value={pad.mark}
              onChange={(event) => change({ mark: event.target.value })}
            />
            <Field
              label={t.tare}
              value={pad.tare}
              problem={tareProblem}
              onChange={(event) => change({ tare: event.target.value })}
            />
          </div>
        </div>
      </details>
    </Form>
  );
}

/** What a bag of this size declares: as the last one did, or by its label when it is the first. */
function declaredOf({ line, bags }: Floor): number | null {
  const [known] = bags;
  return known?.declaredGrams ?? gramsOf(line.bagLabel, 'lb');
}

function Verdict({
  pad,
  weighed,
  declaredGrams,
}: {
  pad: PadDraft;
  weighed: Weighed | null;
  declaredGrams: number | null;
}) {
  const t = useLandingText();
  const { format } = useHouse();
  const { unit } = pad;
  if (declaredGrams === null) return null;
  const scale = (grams: number) => scaleText(grams, unit, format.language);
  const received = weighed?.received;
  return (
    <div>
      <ScaleFigure declaredGrams={declaredGrams} weighedGrams={received?.weighedGrams ?? 0} unit={unit} />
      <p aria-live="polite">
        {weighed && received ? (
          <>
            <b>{t.grain(`${scale(received.weighedGrams)} ${unit}`)}</b>{' '}
            {received.shortGrams > 0
              ? t.shortOf(scale(received.shortGrams), scale(declaredGrams), scale(received.toleranceGrams))
              : received.overGrams > 0
                ? t.overOf(scale(received.overGrams), scale(declaredGrams))
                : t.agrees(scale(received.toleranceGrams), scale(declaredGrams))}{' '}
            <span className="soft">{t.sackOff(scale(weighed.tareGrams))}</span>
          </>
        ) : (
          <span className="soft">{t.declares(`${scale(declaredGrams)} ${unit}`)}</span>
        )}
      </p>
      {pad.condition === 'wet' || pad.condition === 'infested' || pad.condition === 'odour' ? (
        <p className="said watch-said">{t.willBeHeld}</p>
      ) : null}
    </div>
  );
}
